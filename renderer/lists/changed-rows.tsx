import type { RowChange } from '../../shared-schemas/row-change.ts'
import { LongList } from '../components/long-list.tsx'

/** The rows that are written, each with what it says before and after. */
export function ChangedRows({
  changes,
  title,
}: {
  readonly changes: readonly RowChange[]
  readonly title: string
}) {
  if (changes.length === 0) return null
  return (
    <>
      <h3 className="lists__part">{title}</h3>
      <LongList
        label="Rows written"
        count={changes.length}
        row={at => {
          const change = changes[at]
          return change !== undefined && <Changed change={change} />
        }}
      />
    </>
  )
}

function Changed({ change: { table, change, row, columns } }: { readonly change: RowChange }) {
  return (
    <>
      <p>
        <span className={`changed__word changed__word--${change}`}>{change}</span>{' '}
        <span className="quiet">{table.replaceAll('_', ' ')}</span> <span className="number">{row}</span>
      </p>
      <p className="changed__columns">
        {columns.map(({ column, before, after }) => (
          <span key={column} className="changed__column">
            <span className="quiet">{column.replaceAll('_', ' ')}</span>{' '}
            {change === 'changed' && (
              <>
                <del className="number">{before || 'empty'}</del> <span aria-hidden="true">→</span>{' '}
              </>
            )}
            <span className="number">{(change === 'removed' ? before : after) || 'empty'}</span>
          </span>
        ))}
      </p>
    </>
  )
}
