import type { PartKnown } from '../../shared-schemas/reorder-settings.ts'
import { ask } from '../bridge/client.ts'
import { ScrollRegion } from '../components/scroll-region.tsx'
import { pieces } from './line-words.ts'
import type { PartChange } from './use-part-changes.ts'

interface PartUsesProps {
  readonly known: PartKnown
  readonly initials: string
  readonly onChange: (change: PartChange) => void
}

/** What was asked for in the last year by day and job, each of which can be marked as one that will not come again. */
export function PartUses({ known, initials, onChange }: PartUsesProps) {
  const { partNumber, uses, earlierUses } = known
  if (uses.length === 0) return <p className="quiet">Nobody asked for {partNumber} in the last year.</p>
  const mark = (reference: string, isOneOff: boolean) => {
    const say = (holds: boolean) =>
      ask('reorder.mark-one-off', {
        ...{ reference, isOneOff: holds },
        ...(initials.trim() === '' ? {} : { initials: initials.trim() }),
      })
    onChange({
      words: isOneOff
        ? `What ${reference} took is not counted as demand.`
        : `What ${reference} took is counted as demand again.`,
      make: () => say(isOneOff),
      takeBack: () => say(!isOneOff),
    })
  }
  return (
    <details className="reorder-left-out">
      <summary>Who asked for {partNumber} in the last year</summary>
      <p className="quiet">
        A one-off job will not come again: nothing it took, of any part, is counted as demand.
        {earlierUses > 0 && ` The latest ${uses.length} are shown; there were ${earlierUses} before them.`}
      </p>
      <ScrollRegion label={`Who asked for ${partNumber}`} isTall>
        <table className="stock-table stock-table--narrow">
          <thead>
            <tr>
              <th scope="col">Day</th>
              <th scope="col">Job or customer</th>
              <th scope="col" className="stock-figure">
                Pieces
              </th>
              <th scope="col">Counted</th>
            </tr>
          </thead>
          <tbody>
            {uses.map(({ date, reference, quantity, isOneOff }) => (
              <tr key={`${date} ${reference}`}>
                <th scope="row">{date}</th>
                <td className="number">{reference}</td>
                <td className="stock-figure">
                  {quantity < 0 ? `${pieces(-quantity)} brought back` : pieces(quantity)}
                </td>
                <td>
                  {isOneOff ? 'no, one-off' : 'yes'}{' '}
                  {reference !== '' && (
                    <button type="button" className="plain-button" onClick={() => mark(reference, !isOneOff)}>
                      {isOneOff ? 'Count it again' : 'Mark as one-off'}
                      <span className="unseen"> {reference}</span>
                    </button>
                  )}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollRegion>
    </details>
  )
}
