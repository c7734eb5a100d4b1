import { useCallback, useEffect, useState } from 'react'
import type { NamedScreen } from './components/top-line.tsx'

export type ScreenName = keyof typeof shortcuts

/** Beside each other on the keyboard, in the order in which they stand on the top line. */
const shortcuts = { Counter: 'F3', 'Order check': 'F4', Shelves: 'F5', Vans: 'F1' } as const

/** Which screen shows, which have been shown since the start, and the keys and words that change it. */
export function useScreens() {
  const [showing, setShowing] = useState<ScreenName>('Counter')
  const [shown, setShown] = useState<ReadonlySet<ScreenName>>(new Set(['Counter']))
  const show = useCallback((name: ScreenName) => {
    setShowing(name)
    setShown(before => new Set([...before, name]))
  }, [])
  useEffect(() => {
    const act = (event: KeyboardEvent) => {
      if (event.isComposing || event.altKey || event.ctrlKey || event.metaKey) return
      const wanted = names.find(name => shortcuts[name] === event.key)
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
  return { showing, shown, screens }
}

const names = Object.keys(shortcuts) as ScreenName[]
