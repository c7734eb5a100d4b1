import { useQuery } from '@tanstack/react-query'
import { useEffect } from 'react'
import { ask } from '../bridge/client.ts'
import { type NamedScreen, TopLine } from '../components/top-line.tsx'
import { useScreenKeys } from '../components/use-screen-keys.ts'
import { ScanLine } from '../scanning/scan-line.tsx'
import { ScannerPanel } from '../scanning/scanner-panel.tsx'
import { useScanned } from '../scanning/use-scanned.ts'
import { ChoosePlace } from './choose-place.tsx'
import { CompareSheet } from './compare-sheet.tsx'
import { CountSheet } from './count-sheet.tsx'
import { useCount } from './use-count.ts'

/** Counting a van or a shelf: what is counted, the blind sheet, the comparison with the book, and what was counted before. */
export function VansScreen({ screens }: { readonly screens: readonly NamedScreen[] }) {
  const count = useCount()
  const summary = useQuery({
    queryKey: ['catalogue.read-summary'],
    queryFn: () => ask('catalogue.read-summary', {}),
    staleTime: Number.POSITIVE_INFINITY,
  })
  const { note, take, undo, forget } = useScanned({
    onPart: async part => `${await count.read(part.partNumber, part.pieces, 'add')} ${part.description}`,
    onLocation: ({ location }) => count.begin(location),
    onUndo: count.takeBack,
  })
  const { stage, setStage, countId } = count
  const leave = () => {
    forget()
    count.leave()
  }
  useScreenKeys({
    Escape: () => {
      forget()
      if (stage === 'compare') setStage('count')
      focusFirstField()
    },
    F2: undo,
    F8: () => window.print(),
    F9: () => {
      if (countId !== null) setStage(stage === 'compare' ? 'count' : 'compare')
    },
  })
  useEffect(focusFirstField, [stage, countId])
  const locations = summary.data?.locations ?? []
  return (
    <div className="counter">
      <TopLine screens={screens} shop={locations.find(({ kind }) => kind === 'shop')?.name ?? 'Tallyplate'} />
      <main className="stock-bench">
        <h1 className="unseen">Vans</h1>
        <ScanLine note={note} onAttached={take} />
        {stage === 'choose' && <ChoosePlace count={count} locations={locations} />}
        {stage === 'count' && <CountSheet count={count} onUndo={undo} onLeave={leave} />}
        {stage === 'compare' && <CompareSheet count={count} onLeave={leave} />}
        <ScannerPanel locations={locations} />
      </main>
    </div>
  )
}

/** Where typing goes on after Esc and after each step. */
function focusFirstField(): void {
  const field = document.querySelector<HTMLElement>('.stock-bench [data-first-field]')
  field?.focus()
  if (field instanceof HTMLInputElement) field.select()
}
