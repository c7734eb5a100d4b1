import { useEffect, useRef } from 'react'

/**
 * Keys that act from anywhere on a screen while it shows, by the name of the key. A sheet keeps every
 * key from the screens behind it, so what acts on a sheet says that it is there.
 */
export function useScreenKeys(
  actions: Readonly<Record<string, () => void>>,
  { isOnSheet }: { readonly isOnSheet: boolean } = { isOnSheet: false },
): void {
  const current = useRef(actions)
  useEffect(() => {
    current.current = actions
  })
  useEffect(() => {
    const act = (event: KeyboardEvent) => {
      if (event.isComposing || event.altKey || event.metaKey || event.ctrlKey) return
      const action = Object.hasOwn(current.current, event.key) ? current.current[event.key] : undefined
      if (action === undefined) return
      event.preventDefault()
      action()
    }
    document.addEventListener('keydown', act, { capture: isOnSheet })
    return () => document.removeEventListener('keydown', act, { capture: isOnSheet })
  }, [isOnSheet])
}
