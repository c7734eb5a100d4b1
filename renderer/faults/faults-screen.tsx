import { useEffect, useRef } from 'react'
import { wordAnswer, wordEnd } from '../../shared-schemas/word-faults.ts'
import { ProblemNote } from '../components/problem-note.tsx'
import { type NamedScreen, TopLine } from '../components/top-line.tsx'
import { useHanded } from '../hand-over.ts'
import { AnswersList } from './answers-list.tsx'
import { ApplianceFields } from './appliance-fields.tsx'
import { CauseBars } from './cause-bars.tsx'
import { CheckCard } from './check-card.tsx'
import { CheckSheet } from './check-sheet.tsx'
import { Ending } from './ending.tsx'
import { Lessons } from './lessons.tsx'
import { SymptomField } from './symptom-field.tsx'
import { useAnswering } from './use-answering.ts'
import { useFaultKeys } from './use-fault-keys.ts'
import { type Faults, useFaults } from './use-faults.ts'
import { useFocusOnCard } from './use-focus-on-card.ts'

/** From symptom to the part worth ordering: what it does on the left, one check at a time on the right. */
export function FaultsScreen({ screens }: { readonly screens: readonly NamedScreen[] }) {
  const faults = useFaults()
  const { step, weighed, check, shop, problem } = faults
  const symptomField = useRef<HTMLInputElement>(null)
  const heading = useRef<HTMLHeadingElement>(null)
  const answering = useAnswering(faults)
  useHanded('Faults', ({ appliance }) => step({ do: 'take-appliance', appliance }))
  useFaultKeys({ faults, answering, symptomField })
  useFocusOnCard(weighed === undefined ? null : (check?.check ?? theEnd), heading)
  useEffect(() => symptomField.current?.focus(), [])

  return (
    <div className="counter">
      <TopLine screens={screens} shop={shop} />
      <main className="order-bench faults-bench">
        <h1 className="unseen">Faults</h1>
        <div className="stock-side">
          <ApplianceFields faults={faults} />
          <SymptomField faults={faults} field={symptomField} />
          {weighed !== undefined && (
            <AnswersList
              answers={weighed.answers}
              onChange={name => step({ do: 'ask', check: name })}
              onTakeBack={() => step({ do: 'take-back' })}
            />
          )}
        </div>
        <div className="faults__card">
          {problem !== null && (
            <ProblemNote problem={problem} kept="What was answered is kept." onRetry={faults.onAskAgain} />
          )}
          {weighed === undefined && problem === null && <NothingChosen faults={faults} />}
          {weighed !== undefined && check === undefined && (
            <Ending faults={faults} weighed={weighed} heading={heading} />
          )}
          {weighed !== undefined && check !== undefined && (
            <CheckCard
              check={check}
              given={givenBefore(faults, check.check)}
              heading={heading}
              problem={answering.problem}
              onOutcome={answering.onOutcome}
              onMeasured={answering.onMeasured}
              onLeave={answering.onLeave}
            />
          )}
          {weighed !== undefined && <CauseBars weighed={weighed} />}
        </div>
        {weighed !== undefined && <CheckSheet weighed={weighed} model={faults.enquiry.appliance.model} />}
        <p className="unseen" role="status">
          {weighed === undefined ? '' : check === undefined ? wordEnd(weighed) : `Next: ${check.check}.`}
        </p>
      </main>
    </div>
  )
}

const theEnd = 'the end'

function NothingChosen({ faults: { symptoms } }: { readonly faults: Faults }) {
  return symptoms.length === 0 ? (
    <p className="order-card__empty">
      The guide is empty. Load faults.csv and fault_checks.csv on the Lists screen first.
    </p>
  ) : (
    <div className="faults__empty">
      <p className="order-card__sentence">Type what the customer says, and choose the symptom.</p>
      <p>
        The checks follow one at a time, the one that tells most in the least time first, until a part is
        worth ordering or none is needed.
      </p>
      <Lessons />
    </div>
  )
}

/** What was answered to the check that stands, where a person went back to it. */
function givenBefore({ weighed }: Faults, check: string): string | null {
  const answer = weighed?.answers.find(({ asked }) => asked.check === check)
  return answer === undefined ? null : wordAnswer(answer)
}
