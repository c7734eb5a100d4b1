import { type RefObject, useEffect } from 'react'
import { focusAndSelect } from '../components/focus-and-select.ts'

interface CounterKeys {
  readonly plateField: RefObject<HTMLInputElement | null>
  readonly partField: RefObject<HTMLInputElement | null>
  readonly onCopySlip: () => void
  readonly onFindFault: () => void
}

/** Keys that act from anywhere on the Counter: Esc back to the plate, F2 to the part in the hand, F8 copies the slip, Alt+W asks what is wrong with it. */
export function useCounterKeys({ plateField, partField, onCopySlip, onFindFault }: CounterKeys): void {
  useEffect(() => {
    const act = (event: KeyboardEvent) => {
      if (event.isComposing || event.ctrlKey || event.metaKey) return
      const action = event.altKey ? actionWithAlt(event.code) : actionOf(event.key)
      if (action === undefined) return
      event.preventDefault()
      action()
    }
    const actionWithAlt = (code: string) => (code === 'KeyW' ? onFindFault : undefined)
    const actionOf = (key: string) => {
      switch (key) {
        case 'Escape':
          return () => focusAndSelect(plateField.current)
        case 'F2':
          return () => focusAndSelect(partField.current)
        case 'F8':
          return onCopySlip
        default:
          return undefined
      }
    }
    document.addEventListener('keydown', act)
    return () => document.removeEventListener('keydown', act)
  }, [plateField, partField, onCopySlip, onFindFault])
}
