import { useEffect, useState } from 'react'

/** True once something has gone on for 150 ms: shorter waits pass without a word. */
export function useLasting(isGoingOn: boolean): boolean {
  const [isLasting, setLasting] = useState(false)
  useEffect(() => {
    if (!isGoingOn) return
    const timer = setTimeout(() => setLasting(true), unnoticedMilliseconds)
    return () => {
      clearTimeout(timer)
      setLasting(false)
    }
  }, [isGoingOn])
  return isGoingOn && isLasting
}

const unnoticedMilliseconds = 150
