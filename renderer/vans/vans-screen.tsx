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
import { TopUpSheet } from './top-up-sheet.tsx'
import { useCount } from './use-count.ts'
import { useTopUp } from './use-top-up.ts'

/**
 * Counting a van or a shelf: what is counted, the blind sheet, the comparison with the book, and what was counted before;
 * and a van's top-up.
 */
export function VansScreen({ screens }: { readonly screens: readonly NamedScreen[] }) {
  const count = useCount()
  const topUp = useTopUp(count.signed)
  const summary = useQuery({
    queryKey: ['catalogue.read-summary'],
    queryFn: () => ask('catalogue.read-summary', {}),
    staleTime: Number.POSITIVE_INFINITY,
  })
  const locations = summary.data?.locations ?? []
  const shelf = locations.find(({ kind }) => kind === 'shop')?.location ?? 'shop'
  const { note, take, undo, forget } = useScanned({
    onPart: async part =>
      topUp.van === null
        ? `${await count.read(part.partNumber, part.pieces, 'add')} ${part.description}`
        : topUp.confirm(part.partNumber, part.pieces, shelf),
    onLocation: ({ location, name }) => {
      if (topUp.van === null) return count.begin(location)
      throw new Error(`${name}: leave this top-up first, then scan the label again.`)
    },
    onUndo: () => (topUp.van === null ? count.takeBack() : topUp.takeBack()),
  })
  const { stage, setStage, countId } = count
  const leave = () => {
    forget()
    count.leave()
    topUp.begin(null)
  }
  const counted = locations.find(({ location }) => location === count.sheet.data?.location)
  const mayTopUp = counted?.kind === 'van'
  const beginTopUp = () => topUp.begin(counted?.location ?? null)
  useScreenKeys({
    Escape: () => {
      forget()
      if (stage === 'compare') setStage('count')
      focusFirstField()
    },
    F2: undo,
    F8: () => window.print(),
    F9: () => {
      if (countId !== null && topUp.van === null) setStage(stage === 'compare' ? 'count' : 'compare')
    },
  })
  useEffect(focusFirstField, [stage, countId, topUp.van])
  return (
    <div className="counter">
      <TopLine screens={screens} shop={locations.find(({ kind }) => kind === 'shop')?.name ?? 'Tallyplate'} />
      <main className="stock-bench">
        <h1 className="unseen">Vans</h1>
        <ScanLine note={note} onAttached={take} />
        {stage === 'choose' && topUp.van === null && (
          <ChoosePlace count={count} locations={locations} onTopUp={topUp.begin} />
        )}
        {topUp.van !== null && (
          <TopUpSheet key={topUp.van} topUp={topUp} shelf={shelf} onUndo={undo} onLeave={leave} />
        )}
        {stage === 'count' && topUp.van === null && (
          <CountSheet count={count} onUndo={undo} onLeave={leave} />
        )}
        {stage === 'compare' && topUp.van === null && (
          <CompareSheet count={count} onLeave={leave} onTopUp={mayTopUp ? beginTopUp : undefined} />
        )}
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
