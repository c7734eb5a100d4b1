import type { FittingPart } from '../../shared-schemas/fit-check.ts'
import { AskedAndNeeded } from '../components/asked-and-needed.tsx'
import { CautionList } from '../components/caution-list.tsx'
import { KeyHint } from '../components/key-hint.tsx'
import { PartPlaces } from '../components/part-places.tsx'
import { VerdictWord } from '../components/verdict-word.tsx'
import { wordMoney } from '../components/word-money.ts'
import type { PartGroup as Group } from './group-parts.ts'

interface PartGroupProps {
  readonly group: Group
  readonly onWhy: (part: string) => void
}

/** Parts with one verdict for the same reasons: each with its maker, where it lies and what it costs; the reasons once. */
export function PartGroup({ group: { parts, shared }, onWhy }: PartGroupProps) {
  const { verdict, ask, alsoNeeds, reasons } = shared
  return (
    <li className="part-group">
      <VerdictWord verdict={verdict} />
      <table className="part-table">
        <thead className="unseen">
          <tr>
            <th scope="col">Part</th>
            <th scope="col">Maker</th>
            <th scope="col">Where</th>
            <th scope="col">We pay</th>
            <th scope="col">Why</th>
          </tr>
        </thead>
        <tbody>
          {parts.map(part => (
            <PartRow key={part.partNumber} part={part} onWhy={onWhy} />
          ))}
        </tbody>
      </table>
      <CautionList cautions={shared.cautions} />
      <div className="part-group__why">
        <AskedAndNeeded ask={ask} alsoNeeds={alsoNeeds} reasons={reasons} />
      </div>
    </li>
  )
}

interface PartRowProps {
  readonly part: FittingPart
  readonly onWhy: (part: string) => void
}

function PartRow({ part, onWhy }: PartRowProps) {
  const { partNumber, kind, maker, price, supersededBy, onHand } = part
  return (
    <tr className="part-row">
      <th scope="row" className="number part-row__number">
        {partNumber}
      </th>
      <td>
        {kind === 'genuine' ? 'Genuine' : 'Pattern'}, {maker}
        {supersededBy !== null && (
          <>
            ; replaced by <span className="number">{supersededBy}</span>
          </>
        )}
      </td>
      <td>
        <PartPlaces onHand={onHand} />
      </td>
      <td className="part-row__price">
        {price === null ? 'no offer' : `${wordMoney(price)}, ${price.supplier}`}
      </td>
      <td className="part-row__why">
        <button
          type="button"
          className="plain-button"
          data-why-part={partNumber}
          aria-keyshortcuts="F9"
          aria-haspopup="dialog"
          onClick={() => onWhy(partNumber)}
        >
          Why<span className="unseen"> {partNumber}</span> <KeyHint>F9</KeyHint>
        </button>
      </td>
    </tr>
  )
}
