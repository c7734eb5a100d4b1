import { type RefObject, useEffect, useState } from 'react'

export interface TypedSelection {
  readonly start: number
  readonly end: number
}

/** Where the caret stands in a field whose text is drawn elsewhere; null while the field has no focus. */
export function useTypedSelection(field: RefObject<HTMLInputElement | null>): TypedSelection | null {
  const [selection, setSelection] = useState<TypedSelection | null>(null)
  useEffect(() => {
    const look = () => {
      const input = field.current
      const next =
        input === null || document.activeElement !== input
          ? null
          : { start: input.selectionStart ?? 0, end: input.selectionEnd ?? 0 }
      setSelection(known => (known?.start === next?.start && known?.end === next?.end ? known : next))
    }
    const events = ['selectionchange', 'focusin', 'focusout', 'input'] as const
    // After `focusout` nothing has the focus yet, so every look waits for the event to be over.
    const lookLater = () => queueMicrotask(look)
    for (const event of events) document.addEventListener(event, lookLater)
    look()
    return () => {
      for (const event of events) document.removeEventListener(event, lookLater)
    }
  }, [field])
  return selection
}
