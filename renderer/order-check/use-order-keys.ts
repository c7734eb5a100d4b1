import { type RefObject, useEffect, useRef } from 'react'

interface OrderKeys {
  readonly field: RefObject<HTMLTextAreaElement | null>
  readonly onOpen: () => void
  readonly onCheck: () => void
  readonly onNextStop: () => void
  readonly onCopy: () => void
  readonly onSave: () => void
}

/** Keys that act from anywhere on this screen: Esc back to the order, and one for each thing it does. */
export function useOrderKeys(keys: OrderKeys): void {
  const current = useRef(keys)
  useEffect(() => {
    current.current = keys
  })
  useEffect(() => {
    const act = (event: KeyboardEvent) => {
      if (event.isComposing || event.altKey || event.metaKey || event.ctrlKey) return
      const { field, onOpen, onCheck, onNextStop, onCopy, onSave } = current.current
      const actions: Readonly<Record<string, () => void>> = {
        Escape: () => selectOrder(field.current),
        F2: onNextStop,
        F6: onOpen,
        F8: onCopy,
        F9: onCheck,
        F10: onSave,
      }
      const action = actions[event.key]
      if (action === undefined) return
      event.preventDefault()
      action()
    }
    document.addEventListener('keydown', act)
    return () => document.removeEventListener('keydown', act)
  }, [])
}

export function selectOrder(field: HTMLTextAreaElement | null): void {
  field?.focus()
  field?.select()
}
