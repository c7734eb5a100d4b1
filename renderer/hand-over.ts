import { createContext, useContext, useEffect, useRef } from 'react'
import type { ApplianceQuestion } from '../shared-schemas/plate-reading.ts'

/** What one screen hands to another, so that nothing is typed twice. */
export type Handed =
  | { readonly to: 'Faults'; readonly appliance: ApplianceQuestion }
  | { readonly to: 'Counter'; readonly part: string }
  | { readonly to: 'Order check'; readonly lines: readonly OrderedPart[] }
  | { readonly to: 'Jobs'; readonly job: string }

/** A part for an appliance, as an order has it. */
export interface OrderedPart {
  readonly part: string
  readonly quantity: number
  readonly brand: string
  readonly model: string
}

export interface HandOver {
  /** What waits to be taken; null where nothing does. */
  readonly handed: Handed | null
  /** Shows the other screen and hands it this. */
  readonly handOn: (handed: Handed) => void
  readonly clear: () => void
}

export const HandOverContext = createContext<HandOver>({
  handed: null,
  handOn: () => {},
  clear: () => {},
})

export function useHandOn(): HandOver['handOn'] {
  return useContext(HandOverContext).handOn
}

/** Takes what is handed to this screen, once, as soon as the screen shows. */
export function useHanded<To extends Handed['to']>(
  to: To,
  take: (handed: Extract<Handed, { readonly to: To }>) => void,
): void {
  const { handed, clear } = useContext(HandOverContext)
  const taken = useRef<Handed | null>(null)
  useEffect(() => {
    if (handed === null || handed === taken.current || !isFor(handed, to)) return
    taken.current = handed
    take(handed)
    clear()
  })
}

function isFor<To extends Handed['to']>(
  handed: Handed,
  to: To,
): handed is Extract<Handed, { readonly to: To }> {
  return handed.to === to
}
