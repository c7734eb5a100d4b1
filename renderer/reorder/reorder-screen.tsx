import { useQuery } from '@tanstack/react-query'
import { useEffect } from 'react'
import type { Proposal } from '../../shared-schemas/proposal.ts'
import { ask } from '../bridge/client.ts'
import { KeyHint } from '../components/key-hint.tsx'
import { ProblemNote } from '../components/problem-note.tsx'
import { type NamedScreen, TopLine } from '../components/top-line.tsx'
import { useLasting } from '../components/use-lasting.ts'
import { useScreenKeys } from '../components/use-screen-keys.ts'
import { wordMoney } from '../components/word-money.ts'
import { addAmounts } from './add-amounts.ts'
import { LastChange } from './last-change.tsx'
import { LeftOutList } from './left-out-list.tsx'
import { percent } from './line-words.ts'
import { OrderSheetList } from './order-sheet-list.tsx'
import { OrderingSettings } from './ordering-settings.tsx'
import { PlayedYearPanel } from './played-year.tsx'
import { ProposalSettings } from './proposal-settings.tsx'
import { count } from './reorder-line.tsx'
import { SupplierOrder } from './supplier-order.tsx'
import { useOrderSheets } from './use-order-sheets.ts'
import { useReorder } from './use-reorder.ts'

/** The week's reorder: what it goes by, the order of each supplier, what is left out, and the order sheets. */
export function ReorderScreen({ screens }: { readonly screens: readonly NamedScreen[] }) {
  const reorder = useReorder()
  const sheets = useOrderSheets(reorder.forgetTyped)
  const summary = useQuery({
    queryKey: ['catalogue.read-summary'],
    queryFn: () => ask('catalogue.read-summary', {}),
    staleTime: Number.POSITIVE_INFINITY,
  })
  const { proposal, typed, initials } = reorder
  const { data } = proposal
  const isWaiting = useLasting(proposal.isFetching)
  const make = () => {
    if (data !== undefined && !sheets.isBusy && !proposal.isFetching)
      sheets.make(data.orders, typed, initials)
  }
  useScreenKeys({
    Escape: focusFirstField,
    F2: () => openNextStop(reorder.setOpened, data),
    F9: () => void reorder.makeAnew(),
    F10: make,
  })
  useEffect(focusFirstField, [])
  const shop = summary.data?.locations.find(({ kind }) => kind === 'shop')?.name ?? 'Tallyplate'
  return (
    <div className="counter">
      <TopLine screens={screens} shop={shop} />
      <main className="stock-bench reorder-bench">
        <h1 className="unseen">Reorder</h1>
        <ProposalSettings reorder={reorder} />
        <p className="stock-sentence" role="status">
          {isWaiting ? 'Working the proposal out…' : data === undefined ? '' : wordProposal(data)}
        </p>
        {proposal.error !== null && (
          <ProblemNote
            problem={proposal.error}
            kept="Nothing was ordered."
            onRetry={() => void proposal.refetch()}
          />
        )}
        {data !== undefined && (
          <>
            <p className="quiet">{wordAim(data)}</p>
            <LastChange changes={reorder.changes} />
            <div className="stock-form">
              <p className="stock-form__field stock-form__field--short">
                <label htmlFor="reorder-initials">Initials</label>
                <input
                  id="reorder-initials"
                  className="text-field"
                  maxLength={6}
                  autoComplete="off"
                  value={initials}
                  onChange={event => reorder.setInitials(event.target.value)}
                />
              </p>
              {data.orders.length > 0 && (
                <button
                  type="button"
                  className="order-button order-button--main"
                  aria-keyshortcuts="F10"
                  disabled={sheets.isBusy}
                  onClick={make}
                >
                  Make the order sheets <KeyHint>F10</KeyHint>
                </button>
              )}
              {stoppedLines(data).length > 0 && (
                <button
                  type="button"
                  className="order-button"
                  aria-keyshortcuts="F2"
                  onClick={() => openNextStop(reorder.setOpened, data)}
                >
                  Next stop <KeyHint>F2</KeyHint>
                </button>
              )}
              <p className={sheets.hasFailed ? 'problem-note' : 'stock-form__said'} role="status">
                {sheets.said}
              </p>
            </div>
            {data.orders.map(order => (
              <SupplierOrder key={order.supplier} order={order} reorder={reorder} />
            ))}
            <LeftOutList proposal={data} />
            <PlayedYearPanel reorder={reorder} />
          </>
        )}
        <OrderSheetList sheets={sheets} initials={initials} />
        <OrderingSettings />
      </main>
    </div>
  )
}

/** What the week comes to, by currency. */
function wordProposal({ orders, parts, enough }: Proposal): string {
  if (orders.length === 0)
    return parts === 0
      ? 'There is no part to order yet. Load a catalogue with usage and offers first (Alt+L).'
      : `Nothing is to be ordered: of ${count(parts, 'part')}, ${enough} have enough or are coming.`
  const lines = orders.reduce((sum, order) => sum + order.lines.length, 0)
  const totals = [...Map.groupBy(orders, ({ currency }) => currency)].map(([currency, ofIt]) =>
    wordMoney({ price: addAmounts(ofIt.map(({ total }) => total)), currency }),
  )
  return `Proposed: ${count(orders.length, 'order')} with ${count(lines, 'line')}, ${totals.join(' and ')} together. Of ${count(parts, 'part')}, ${enough} have enough.`
}

/** What it goes by, and how near to the best it is. */
function wordAim({ asOf, targetFillRate, expectedFillRate, reviewDays, proofs }: Proposal): string {
  const bounded = proofs.filter(({ kind }) => kind === 'bounded')
  const best =
    bounded.length === 0
      ? 'Suppliers and quantities are proved to be the cheapest.'
      : bounded
          .map(
            ({ currency, gap, gapShare }) =>
              `Suppliers and quantities are at most ${wordMoney({ price: gap, currency })} (${percent(gapShare)}) from the cheapest.`,
          )
          .join(' ')
  return `Levels of ${asOf}, for ${percent(targetFillRate)} of the pieces asked for to be there (expected ${percent(expectedFillRate)}), ordered every ${reviewDays} days. ${proofs.length > 0 ? best : ''}`
}

function stoppedLines({ orders }: Proposal): string[] {
  return orders.flatMap(({ supplier, lines }) =>
    lines
      .filter(({ flags }) => flags.some(({ severity }) => severity === 'stop'))
      .map(({ partNumber }) => `${supplier} ${partNumber}`),
  )
}

function openNextStop(open: (key: string) => void, proposal: Proposal | undefined): void {
  const [first] = proposal === undefined ? [] : stoppedLines(proposal)
  if (first !== undefined) open(first)
}

function focusFirstField(): void {
  const field = document.querySelector<HTMLElement>('.reorder-bench [data-first-field]')
  field?.focus()
  if (field instanceof HTMLInputElement) field.select()
}
