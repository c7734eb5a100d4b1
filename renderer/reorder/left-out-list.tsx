import type { Proposal } from '../../shared-schemas/proposal.ts'
import { ScrollRegion } from '../components/scroll-region.tsx'
import { leftOutWords } from './line-words.ts'

/** What is fetched from vans before anything is bought, and what is not ordered and why. */
export function LeftOutList({ proposal: { moves, leftOut } }: { readonly proposal: Proposal }) {
  const groups = [...Map.groupBy(leftOut, ({ why }) => why)]
  return (
    <>
      {moves.length > 0 && (
        <section aria-labelledby="reorder-moves">
          <h2 id="reorder-moves" className="stock-heading">
            Bring back to the shop first
          </h2>
          <ul>
            {moves.map(({ partNumber, description, quantity, from }) => (
              <li key={`${from} ${partNumber}`}>
                {quantity} × <span className="number">{partNumber}</span> {description} from{' '}
                <span className="number">{from}</span>
              </li>
            ))}
          </ul>
        </section>
      )}
      {groups.length > 0 && (
        <section aria-labelledby="reorder-left-out">
          <h2 id="reorder-left-out" className="stock-heading">
            Not ordered, and why
          </h2>
          {groups.map(([why, lines]) => (
            <details key={why} className="reorder-left-out">
              <summary>
                {leftOutWords[why]}: {lines.length}
              </summary>
              <ScrollRegion label={leftOutWords[why]} isTall>
                <ul>
                  {lines.map(({ partNumber, description, text }) => (
                    <li key={partNumber}>
                      <span className="number">{partNumber}</span> {description}. {text}
                    </li>
                  ))}
                </ul>
              </ScrollRegion>
            </details>
          ))}
        </section>
      )}
    </>
  )
}
