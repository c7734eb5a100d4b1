import type { ColumnHolds } from '../../shared-schemas/order-sheets.ts'
import { addColumn, changeColumn, type LaidColumn, moveUp, removeColumn } from './change-columns.ts'
import { WordedSelect } from './kept-form.tsx'

interface OrderColumnsProps {
  readonly columns: readonly LaidColumn[]
  readonly onChange: (columns: readonly LaidColumn[]) => void
}

/** The columns of a supplier's order file in their order, each with its heading and what it holds. */
export function OrderColumns({ columns, onChange }: OrderColumnsProps) {
  return (
    <fieldset className="reorder-columns">
      <legend>Columns of its file, with their headings</legend>
      <ol className="reorder-columns">
        {columns.map((column, at) => {
          const place = `column ${at + 1}`
          return (
            <li key={column.id} className="reorder-columns__column">
              <input
                className="text-field"
                aria-label={`Heading of ${place}`}
                maxLength={100}
                autoComplete="off"
                value={column.heading}
                onChange={event =>
                  onChange(changeColumn(columns, { ...column, heading: event.target.value }))
                }
              />
              <WordedSelect
                aria-label={`What ${place} holds`}
                value={column.holds}
                words={holdsWords}
                onChange={holds => onChange(changeColumn(columns, { ...column, holds }))}
              />
              <button
                type="button"
                className="plain-button"
                aria-disabled={at === 0}
                onClick={() => onChange(moveUp(columns, column.id))}
              >
                Up <span className="unseen">{place}</span>
              </button>
              <button
                type="button"
                className="plain-button"
                onClick={() => onChange(removeColumn(columns, column.id))}
              >
                Leave out <span className="unseen">{place}</span>
              </button>
            </li>
          )
        })}
      </ol>
      <p>
        <button
          type="button"
          className="plain-button"
          disabled={columns.length >= mostColumns}
          onClick={() => onChange(addColumn(columns))}
        >
          One column more
        </button>
      </p>
    </fieldset>
  )
}

/** As many as the request takes. */
const mostColumns = 60

const holdsWords: Readonly<Record<ColumnHolds, string>> = {
  'order-number': 'order number',
  'order-date': 'day of the order',
  account: 'our account',
  line: 'number of the line',
  'supplier-code': 'the supplier’s number',
  'part-number': 'the maker’s part number',
  description: 'description',
  gtin: 'GTIN',
  quantity: 'pieces',
  pack: 'pieces in a pack',
  'unit-price': 'price of a piece',
  amount: 'price of the line',
  currency: 'currency',
  job: 'job',
  nothing: 'nothing',
}
