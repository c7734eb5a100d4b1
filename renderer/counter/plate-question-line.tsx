import type { AskedReading } from '../../shared-schemas/fit-check.ts'
import { wordAskChosen } from '../../shared-schemas/word-ask-chosen.ts'
import { VerdictWord } from '../components/verdict-word.tsx'
import { choicesOf } from './asked-choices.ts'
import type { PlateQuestion } from './choose-plate-question.ts'
import type { CounterEnquiry, EnquiryStep } from './counter-enquiry.ts'
import { listWords, nameReading } from './name-reading.ts'

interface QuestionLineProps {
  readonly question: PlateQuestion
  readonly enquiry: CounterEnquiry
  readonly onStep: (step: EnquiryStep) => void
  /** Puts a value into the asked cells, or undefined where it does not name one character for each. */
  readonly onFill: (value: string) => (() => void) | undefined
}

/** The one sentence under the number that says what to read, with the values that would decide. */
export function QuestionLine({ question, enquiry, onStep, onFill }: QuestionLineProps) {
  const answerable = question.readings.map(asked => ({ asked, groups: choicesOf(asked, { onFill, onStep }) }))
  // Values that stand below say themselves what they mean; the sentence need not say it again.
  const isSpeltOut = answerable.every(({ groups }) => groups.length > 0)
  const sentence = isSpeltOut ? `Read ${listWords(question.readings.map(nameReading))}.` : question.sentence
  return (
    <div className="plate-question">
      <p className="plate-question__sentence">
        {[sentence, ...wordAskChosen(question.readings, question.chosen)].join(' ')}
      </p>
      {answerable.map(({ asked, groups }) => (
        <div key={asked.reading} className="plate-question__answers">
          {isMeasured(asked) && <MeasuredField asked={asked} enquiry={enquiry} onStep={onStep} />}
          {groups.map(({ verdict, choices }) => (
            <p key={verdict} className="choices">
              <VerdictWord verdict={verdict} />
              {choices.map(({ value, choose }) =>
                choose === undefined ? (
                  <span key={value} className="choice-value">
                    {value}
                  </span>
                ) : (
                  <button key={value} type="button" className="choice number" onClick={choose}>
                    {value}
                  </button>
                ),
              )}
            </p>
          ))}
        </div>
      ))}
    </div>
  )
}

const onPlate: ReadonlySet<string> = new Set([
  'model-number',
  'brand',
  'made',
  'serial',
  'volts',
  'hertz',
  'watts',
])

function isMeasured({ reading }: AskedReading): boolean {
  return !onPlate.has(reading)
}

function MeasuredField({
  asked: { reading },
  enquiry,
  onStep,
}: {
  readonly asked: AskedReading
  readonly enquiry: CounterEnquiry
  readonly onStep: (step: EnquiryStep) => void
}) {
  return (
    <label className="plate-question__measured">
      <span>{reading} on the old part</span>
      <input
        className="text-field"
        maxLength={60}
        autoComplete="off"
        value={enquiry.measured[reading] ?? ''}
        onChange={event => onStep({ do: 'measure', attribute: reading, value: event.target.value })}
      />
    </label>
  )
}
