import type { FitAnswer } from '../../shared-schemas/fit-check.ts'
import type { PlateReadings } from '../../shared-schemas/plate-reading.ts'
import { AskedAndNeeded } from '../components/asked-and-needed.tsx'
import { CautionList } from '../components/caution-list.tsx'
import { VerdictWord } from '../components/verdict-word.tsx'
import { HistoryView } from './history-view.tsx'
import { ModelsView } from './models-view.tsx'
import { RecordFit } from './record-fit.tsx'
import { WhyView } from './why-view.tsx'

interface PartCheckProps {
  readonly answer: FitAnswer
  readonly readings: PlateReadings
  readonly onTry: (part: string) => void
}

/** The verdict on the part in the customer's hand, with everything it rests on. */
export function PartCheck({ answer, readings, onTry }: PartCheckProps) {
  const { verdict, part, reasons, ask, alsoNeeds, insteadTry, cautions, quantityPerAppliance, hints } = answer
  return (
    <section className={`part-check part-check--${verdict}`} aria-label="Part in the hand">
      <div className="part-check__verdict">
        <VerdictWord verdict={verdict} />
        <p className="part-check__part">
          <span className="number">{part.partNumber ?? part.typed}</span>
          {part.description !== null && <span> {part.description}</span>}
        </p>
        {part.current !== null && part.current !== part.partNumber && (
          <p>
            Supplied today as <span className="number">{part.current}</span>.
          </p>
        )}
        {quantityPerAppliance !== null && quantityPerAppliance > 1 && (
          <p>The appliance takes {quantityPerAppliance}.</p>
        )}
      </div>
      <div className="part-check__why">
        <AskedAndNeeded ask={ask} alsoNeeds={alsoNeeds} reasons={reasons} />
        {hints.map(({ text }) => (
          <p key={text} className="part-check__hint">
            <strong>Hint, and no more:</strong> {text}
          </p>
        ))}
        {insteadTry.length > 0 && (
          <p className="part-check__instead">
            Instead, try{' '}
            {insteadTry.map(number => (
              <button key={number} type="button" className="plain-button" onClick={() => onTry(number)}>
                <span className="number">{number}</span>
              </button>
            ))}
          </p>
        )}
        <WhyView answer={answer} />
        <HistoryView answer={answer} readings={readings} />
        {part.partNumber !== null && <ModelsView part={part.partNumber} />}
        <RecordFit key={`${answer.model?.modelId} ${part.partNumber}`} answer={answer} />
      </div>
      <CautionList cautions={cautions} />
    </section>
  )
}
