import { useEffect, useRef } from 'react'

interface ListsKeys {
  readonly onField: () => void
  readonly onLoads: () => void
  readonly onTry: () => void
  readonly onLoad: () => void
}

/** Keys that act from anywhere on this screen: Esc back to the path, and one for each thing it does. */
export function useListsKeys(keys: ListsKeys): void {
  const current = useRef(keys)
  useEffect(() => {
    current.current = keys
  })
  useEffect(() => {
    const act = (event: KeyboardEvent) => {
      if (event.isComposing || event.altKey || event.metaKey || event.ctrlKey) return
      const { onField, onLoads, onTry, onLoad } = current.current
      const actions: Readonly<Record<string, () => void>> = {
        Escape: onField,
        F2: onLoads,
        F6: () => document.getElementById('take-proposals')?.click(),
        F8: () => document.getElementById('save-rejected')?.click(),
        F9: onTry,
        F10: onLoad,
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
