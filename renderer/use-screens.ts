import { useCallback, useEffect, useMemo, useState } from 'react'
import type { NamedScreen } from './components/top-line.tsx'
import type { Handed, HandOver } from './hand-over.ts'

export type ScreenName = keyof typeof shortcuts

/**
 * In the order in which they stand on the top line. F3 and F4 for what is asked all day; the rest by a letter of the name with Alt,
 * since the other function keys act on a screen or belong to the browser.
 */
const shortcuts = {
  Counter: 'F3',
  'Order check': 'F4',
  Shelves: 'Alt+S',
  Vans: 'Alt+V',
  Jobs: 'Alt+J',
  Returns: 'Alt+U',
  Reorder: 'Alt+R',
  'Goods-in': 'Alt+G',
  Faults: 'Alt+F',
  Lists: 'Alt+L',
  Catalogue: 'Alt+C',
} as const

/** Which screen shows, which have been shown since the start, the keys and words that change it, and what one hands to another. */
export function useScreens() {
  const [showing, setShowing] = useState<ScreenName>('Counter')
  const [shown, setShown] = useState<ReadonlySet<ScreenName>>(new Set(['Counter']))
  const show = useCallback((name: ScreenName) => {
    setShowing(name)
    setShown(before => new Set([...before, name]))
  }, [])
  useEffect(() => {
    const act = (event: KeyboardEvent) => {
      if (event.isComposing || event.ctrlKey || event.metaKey) return
      const pressed = pressedKey(event)
      const wanted = names.find(name => shortcuts[name] === pressed)
      if (wanted === undefined) return
      event.preventDefault()
      show(wanted)
    }
    document.addEventListener('keydown', act)
    return () => document.removeEventListener('keydown', act)
  }, [show])
  const screens: NamedScreen[] = names.map(name => ({
    name,
    shortcut: shortcuts[name],
    isShowing: name === showing,
    onShow: () => show(name),
  }))
  const [handed, setHanded] = useState<Handed | null>(null)
  const handOver = useMemo<HandOver>(
    () => ({
      handed,
      handOn: given => {
        setHanded(given)
        show(given.to)
      },
      clear: () => setHanded(null),
    }),
    [handed, show],
  )
  return { showing, shown, screens, handOver }
}

const names = Object.keys(shortcuts) as ScreenName[]

/** With Alt by the place of the key, because Alt makes other characters of letters on some keyboards. */
function pressedKey({ altKey, code, key }: KeyboardEvent): string {
  return altKey ? `Alt+${code.replace('Key', '')}` : key
}
