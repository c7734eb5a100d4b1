import { useEffect, useRef } from 'react'

/**
 * Enter pressed before the text was answered, as a scanner does: it is kept and acted upon once the answer to this very
 * text is there, and forgotten when the text changes first. Call the result with Enter's text to keep it.
 */
export function useEarlyEnter(text: string, isAnswered: boolean, act: () => void): (text: string) => void {
  const kept = useRef<string | null>(null)
  useEffect(() => {
    if (kept.current === null) return
    if (kept.current === text && !isAnswered) return
    const isStill = kept.current === text
    kept.current = null
    if (isStill) act()
  })
  return pressedOn => {
    kept.current = pressedOn
  }
}
