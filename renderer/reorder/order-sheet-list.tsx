import type { SheetState, SheetSummary } from '../../shared-schemas/order-sheets.ts'
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
                {sheet.number}
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
    </ScrollRegion>
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
