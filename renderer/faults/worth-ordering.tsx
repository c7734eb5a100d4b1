import type { Remedy } from '../../shared-schemas/fault-finding.ts'
import type { FittingFamily, FittingPart } from '../../shared-schemas/fit-check.ts'
import type { ApplianceQuestion } from '../../shared-schemas/plate-reading.ts'
import { CautionList } from '../components/caution-list.tsx'
import { PartPlaces } from '../components/part-places.tsx'
import { VerdictWord } from '../components/verdict-word.tsx'
import { wordMoney } from '../components/word-money.ts'
import { FittingNotes } from '../fitting-notes/fitting-notes.tsx'
import { useHandOn } from '../hand-over.ts'
import { familiesOf } from './use-worth.ts'

interface WorthOrderingProps {
  readonly remedy: Remedy
  readonly appliance: ApplianceQuestion
  /** Undefined while they are asked for, or where no model is known. */
  readonly families: readonly FittingFamily[] | undefined
}

/** The parts of a remedy for this model: verdict, where they lie, and the way from here to the order or the Counter. */
export function WorthOrdering({ remedy, appliance, families }: WorthOrderingProps) {
  if (appliance.model.trim() === '')
    return <p className="asked-sentence">Type the model number to see which of them fits.</p>
  if (families === undefined) return null
  const fitting = familiesOf(remedy, families)
  if (fitting.length === 0)
    return (
      <p className="asked-sentence">
        Nothing on record says that a part of this kind fits. Nothing is proposed on a guess.
      </p>
    )
  return fitting.map(family => <WorthFamily key={family.family} family={family} appliance={appliance} />)
}

function WorthFamily({
  family: { family, name, cautions, parts, quantityPerAppliance },
  appliance,
}: {
  readonly family: FittingFamily
  readonly appliance: ApplianceQuestion
}) {
  return (
    <div className="worth">
      <CautionList cautions={cautions} />
      <div className="worth__scroll">
        <table className="part-table" aria-label={name}>
          <thead className="unseen">
            <tr>
              <th scope="col">Part</th>
              <th scope="col">Verdict</th>
              <th scope="col">Maker</th>
              <th scope="col">Where</th>
              <th scope="col">We pay</th>
              <th scope="col">Take it on</th>
            </tr>
          </thead>
          <tbody>
            {parts
              .filter(({ verdict }) => verdict !== 'does-not-fit' && verdict !== 'no-record')
              .map(part => (
                <WorthPart
                  key={part.partNumber}
                  part={part}
                  quantity={quantityPerAppliance ?? 1}
                  appliance={appliance}
                />
              ))}
          </tbody>
        </table>
      </div>
      <details>
        <summary>How it goes in, and how it is tested</summary>
        <FittingNotes families={[family]} />
      </details>
    </div>
  )
}

interface WorthPartProps {
  readonly part: FittingPart
  readonly quantity: number
  readonly appliance: ApplianceQuestion
}

function WorthPart({ part, quantity, appliance }: WorthPartProps) {
  const handOn = useHandOn()
  const { partNumber, verdict, kind, maker, onHand, price, cautions, ask } = part
  const line = { part: partNumber, quantity, brand: appliance.brand ?? '', model: appliance.model }
  return (
    <tr className="part-row">
      <th scope="row" className="number part-row__number">
        {partNumber}
      </th>
      <td>
        <VerdictWord verdict={verdict} />
        {ask.map(({ text }) => (
          <p key={text}>{text}</p>
        ))}
        <CautionList cautions={cautions} />
      </td>
      <td>
        {kind === 'genuine' ? 'Genuine' : 'Pattern'}, {maker}
      </td>
      <td>
        <PartPlaces onHand={onHand} />
      </td>
      <td className="part-row__price">{price === null ? 'no offer' : wordMoney(price)}</td>
      <td className="part-row__why">
        <button
          type="button"
          className="plain-button"
          onClick={() => handOn({ to: 'Order check', lines: [line] })}
        >
          To the order check<span className="unseen"> {partNumber}</span>
        </button>
        <button
          type="button"
          className="plain-button"
          onClick={() => handOn({ to: 'Counter', part: partNumber })}
        >
          To the Counter<span className="unseen"> {partNumber}</span>
        </button>
      </td>
    </tr>
  )
}
