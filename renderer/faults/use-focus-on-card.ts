import { type RefObject, useEffect, useRef } from 'react'

/**
 * Moves the focus to what has just come up on the card: the field of a reading, else the heading. `shown` names it; null
 * where nothing is shown, and then the focus stays in the symptom.
 */
export function useFocusOnCard(shown: string | null, heading: RefObject<HTMLHeadingElement | null>): void {
  const last = useRef(shown)
  useEffect(() => {
    if (shown === last.current) return
    last.current = shown
    if (shown === null) return
    const field = heading.current?.closest('section')?.querySelector<HTMLElement>('[data-first-field]')
    const target = field ?? heading.current
    target?.focus()
  }, [shown, heading])
}
