import { type RefObject, useEffect, useRef } from 'react'
import { useScreenKeys } from '../components/use-screen-keys.ts'
import { unlessScanned } from '../scanning/use-scans.ts'
import type { Answering } from './use-answering.ts'
import type { Faults } from './use-faults.ts'

interface FaultKeys {
  readonly faults: Faults
  readonly answering: Answering
  readonly symptomField: RefObject<HTMLInputElement | null>
}

/** Keys that act from anywhere on this screen: Esc back to the symptom, a figure answers, and one for each thing it does. */
export function useFaultKeys({ faults: { step, check }, answering, symptomField }: FaultKeys): void {
  useScreenKeys({
    Escape: () => {
      symptomField.current?.focus()
      symptomField.current?.select()
    },
    F2: () => step({ do: 'take-back' }),
    F6: () => answering.onLeave('could-not-tell'),
    F8: () => window.print(),
    F9: () => answering.onLeave('skipped'),
  })
  const outcomes = check?.measure === null ? check.outcomes : []
  useFigureKeys(figure => {
    const outcome = outcomes[figure - 1]
    if (outcome !== undefined) answering.onOutcome(outcome)
  })
}

/** The figures 1 to 9, unless they are typed into a field or scanned. */
function useFigureKeys(onFigure: (figure: number) => void): void {
  const current = useRef(onFigure)
  useEffect(() => {
    current.current = onFigure
  })
  useEffect(() => {
    const act = (event: KeyboardEvent) => {
      if (event.isComposing || event.altKey || event.metaKey || event.ctrlKey) return
      if (!/^[1-9]$/.test(event.key) || isField(event.target)) return
      event.preventDefault()
      const figure = Number(event.key)
      unlessScanned(() => current.current(figure))
    }
    document.addEventListener('keydown', act)
    return () => document.removeEventListener('keydown', act)
  }, [])
}

function isField(target: EventTarget | null): boolean {
  return target instanceof HTMLElement && target.matches('input, select, textarea')
}
