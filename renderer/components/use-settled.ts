import { useEffect, useState } from 'react'

/** The value once it has stayed the same for so long; while it changes, the last one that did. Same means the same JSON. */
export function useSettled<Value>(value: Value, milliseconds: number): Value {
  const [settled, setSettled] = useState(value)
  const text = JSON.stringify(value)
  const isSettled = JSON.stringify(settled) === text
  useEffect(() => {
    if (isSettled) return
    const timer = setTimeout(() => setSettled(value), milliseconds)
    return () => clearTimeout(timer)
  }, [text, isSettled, milliseconds])
  return milliseconds === 0 ? value : settled
}
