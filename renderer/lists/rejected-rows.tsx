import type { RejectedRow } from '../../shared-schemas/catalogue.ts'
import { LongList } from '../components/long-list.tsx'
import { wordRows } from './word-figures.ts'

/** Each row that is not taken: where it stands, what stands there, why, and what was probably meant. */
export function RejectedRows({ rejected }: { readonly rejected: readonly RejectedRow[] }) {
  if (rejected.length === 0) return null
  return (
    <>
      <h3 className="lists__part">{wordRows(rejected.length)} rejected</h3>
      <LongList
        label="Rejected rows"
        count={rejected.length}
        row={at => {
          const row = rejected[at]
          return row !== undefined && <Rejected row={row} />
        }}
      />
    </>
  )
}

function Rejected({ row: { file, line, column, value, reason, mend } }: { readonly row: RejectedRow }) {
  return (
    <>
      <p className="rejected__where">
        {file}, line <span className="number">{line}</span>
        {column !== '' && (
          <>
            , <span className="number">{column}</span>
          </>
        )}
      </p>
      <p className="rejected__why">
        {value !== '' && <span className="number rejected__value">{value}</span>} {reason}
        {mend !== null && (
          <>
            . Probably <span className="number rejected__value">{mend}</span>
          </>
        )}
      </p>
    </>
  )
}
