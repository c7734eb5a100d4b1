import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import type { SheetState, SheetSummary } from '../../shared-schemas/order-sheets.ts'
import { ask } from '../bridge/client.ts'
import { ScrollRegion } from '../components/scroll-region.tsx'
import { wordMoney } from '../components/word-money.ts'
import type { OrderSheets } from './use-order-sheets.ts'

interface OrderSheetListProps {
  readonly sheets: OrderSheets
  readonly initials: string
}

const states: readonly SheetState[] = ['draft', 'checked', 'sent', 'part-received', 'received', 'cancelled']

const stateWords: Readonly<Record<SheetState, string>> = {
  draft: 'Drafts, with a stop to settle',
  checked: 'Checked, to be sent',
  sent: 'Sent, awaited',
  'part-received': 'Received in part',
  received: 'Received',
  cancelled: 'Cancelled',
}

/** The order sheets by their state, with what can be done with each; those that are over are folded. */
export function OrderSheetList({ sheets, initials }: OrderSheetListProps) {
  const byState = Map.groupBy(sheets.sheets.data?.sheets ?? [], ({ state }) => state)
  const isOver = (state: SheetState) => state === 'received' || state === 'cancelled'
  return (
    <section aria-labelledby="reorder-sheets">
      <h2 id="reorder-sheets" className="stock-heading">
        Order sheets
      </h2>
      {byState.size === 0 && <p className="quiet">No order sheet has been made yet.</p>}
      {byState.size > 0 && (
        <p className="stock-form__field">
          <label htmlFor="reorder-folder">Folder for the suppliers’ files</label>
          <input
            id="reorder-folder"
            className="text-field number"
            spellCheck={false}
            autoComplete="off"
            value={sheets.folder}
            onChange={event => sheets.keepFolder(event.target.value)}
          />
        </p>
      )}
      {states.map(state => {
        const found = byState.get(state) ?? []
        if (found.length === 0) return null
        const table = <SheetTable state={state} found={found} sheets={sheets} initials={initials} />
        return isOver(state) ? (
          <details key={state}>
            <summary>
              {stateWords[state]}: {found.length}
            </summary>
            {table}
          </details>
        ) : (
          <div key={state}>
            <h3 className="findings__name">{stateWords[state]}</h3>
            {table}
          </div>
        )
      })}
    </section>
  )
}

interface SheetTableProps extends OrderSheetListProps {
  readonly state: SheetState
  readonly found: readonly SheetSummary[]
}

function SheetTable({ state, found, sheets, initials }: SheetTableProps) {
  const [opened, setOpened] = useState<string | null>(null)
  return (
    <ScrollRegion label={stateWords[state]}>
      <table className="stock-table">
        <thead>
          <tr>
            <th scope="col">Number</th>
            <th scope="col">Supplier</th>
            <th scope="col" className="stock-figure">
              Lines
            </th>
            <th scope="col" className="stock-figure">
              Total
            </th>
            <th scope="col" className="stock-figure">
              Pieces to come
            </th>
            <th scope="col">
              <span className="unseen">What can be done</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {found.map(sheet => (
            <tr key={sheet.number}>
              <th scope="row" className="number">
                <button
                  type="button"
                  className="link-button"
                  aria-expanded={opened === sheet.number}
                  onClick={() => setOpened(opened === sheet.number ? null : sheet.number)}
                >
                  {sheet.number}
                </button>
              </th>
              <td>{sheet.supplierName || sheet.supplier}</td>
              <td className="stock-figure">{sheet.lines}</td>
              <td className="stock-figure">{wordMoney({ price: sheet.total, currency: sheet.currency })}</td>
              <td className="stock-figure">{sheet.toCome}</td>
              <td>
                <SheetActs sheet={sheet} sheets={sheets} initials={initials} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {opened !== null && <SheetLines number={opened} />}
    </ScrollRegion>
  )
}

/** What a sheet orders and what has come of it, and who did what with it. */
function SheetLines({ number }: { readonly number: string }) {
  const read = useQuery({
    queryKey: ['order-sheets.list-sheets', number],
    queryFn: () => ask('order-sheets.read-sheet', { number }),
  })
  const sheet = read.data?.sheet
  if (sheet === undefined) return read.error === null ? null : <p role="alert">{read.error.message}</p>
  return (
    <section className="reorder-sheet" aria-label={`Lines of ${number}`}>
      <ul>
        {sheet.lines.map(({ line, quantity, partNumber, description, received, toCome, amount }) => (
          <li key={line}>
            {quantity} × <span className="number">{partNumber}</span> {description},{' '}
            {wordMoney({ price: amount, currency: sheet.currency })}; {received} came, {toCome} to come.
          </li>
        ))}
      </ul>
      <p className="quiet">
        {sheet.events
          .map(({ what, recordedAt, initials }) => `${what} ${recordedAt.slice(0, 10)} ${initials}`.trim())
          .join(', ')}
        .
      </p>
    </section>
  )
}

function SheetActs({ sheet, sheets, initials }: OrderSheetListProps & { readonly sheet: SheetSummary }) {
  const { state, number } = sheet
  const acts: (readonly [words: string, act: () => void])[] = [
    ...(state === 'draft' ? [['Check', () => sheets.check(sheet, initials)] as const] : []),
    ...(state === 'checked'
      ? [['Send and write the files', () => sheets.send(sheet, initials)] as const]
      : []),
    ...(state === 'sent' || state === 'part-received' || state === 'received'
      ? [['Write the files again', () => sheets.exportAgain(sheet)] as const]
      : []),
    ...(state === 'draft' || state === 'checked'
      ? [['Cancel', () => sheets.cancel(sheet, initials)] as const]
      : []),
  ]
  return acts.map(([words, act]) => (
    <button key={words} type="button" className="plain-button" disabled={sheets.isBusy} onClick={act}>
      {words}
      <span className="unseen"> {number}</span>
    </button>
  ))
}
