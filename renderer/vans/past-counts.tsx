import type { Output } from '../../shared-schemas/index.ts'
import { ScrollRegion } from '../components/scroll-region.tsx'
import { reasonNames, wordShare } from './count-words.ts'
import { listTrends } from './list-trends.ts'

type PastCount = Output<'van-counts.list-counts'>['counts'][number]

interface PastCountsProps {
  readonly counts: readonly PastCount[]
  readonly onOpen: (countId: string) => void
}

/** What was counted before: how right the book was, what the variances were worth, why, and how that went on per place. */
export function PastCounts({ counts, onOpen }: PastCountsProps) {
  const posted = counts.filter(({ postedAt }) => postedAt !== null)
  if (posted.length === 0)
    return <p className="quiet">Posted counts stand here, with how right the book was and why it was not.</p>
  return (
    <>
      <section>
        <h2 className="stock-heading">Past counts</h2>
        <ScrollRegion label="Past counts">
          <table className="stock-table">
            <thead>
              <tr>
                <th scope="col">Posted</th>
                <th scope="col">Where</th>
                <th scope="col">By</th>
                <th scope="col" className="stock-figure">
                  Lines
                </th>
                <th scope="col" className="stock-figure">
                  Right
                </th>
                <th scope="col" className="stock-figure">
                  Found, value
                </th>
                <th scope="col" className="stock-figure">
                  Missing, value
                </th>
                <th scope="col">Put down to</th>
              </tr>
            </thead>
            <tbody>
              {posted.map(count => (
                <tr key={count.countId}>
                  <th scope="row">
                    <button type="button" className="link-button" onClick={() => onOpen(count.countId)}>
                      {count.postedAt?.slice(0, 10)}
                      <span className="unseen"> of {count.location}, show its lines</span>
                    </button>
                  </th>
                  <td className="number">{count.location}</td>
                  <td>{count.initials}</td>
                  <td className="stock-figure">{count.lines}</td>
                  <td className="stock-figure">
                    {count.recordAccuracy === null ? '' : wordShare(count.recordAccuracy)}
                  </td>
                  <td className="stock-figure">{count.valueGained}</td>
                  <td className="stock-figure">{count.valueLost}</td>
                  <td>
                    {count.reasons.map(({ kind, lines }) => `${lines} ${reasonNames[kind]}`).join(', ')}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </ScrollRegion>
      </section>
      <section aria-labelledby="count-trends">
        <h2 id="count-trends" className="stock-heading">
          How right the book was, count by count
        </h2>
        <table className="stock-table stock-table--narrow">
          <thead>
            <tr>
              <th scope="col">Where</th>
              <th scope="col">The last counts, oldest first</th>
            </tr>
          </thead>
          <tbody>
            {listTrends(counts).map(({ location, counts }) => (
              <tr key={location}>
                <th scope="row" className="number">
                  {location}
                </th>
                <td>
                  <div className="trend">
                    {counts.map(({ countId, day, accuracy }) => (
                      <span key={countId} className="trend__count">
                        {wordShare(accuracy)} <span className="quiet">{day.slice(5)}</span>
                      </span>
                    ))}
                  </div>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </>
  )
}
