import { type FormEvent, type RefObject, useId, useState } from 'react'
import type { DescribedCheck } from '../../shared-schemas/fault-finding.ts'
import { competenceWords, wordMinutes } from '../../shared-schemas/word-faults.ts'
import { CautionList } from '../components/caution-list.tsx'
import { KeyHint } from '../components/key-hint.tsx'

interface CheckCardProps {
  readonly check: DescribedCheck
  /** The outcome or reading that it has already, when it is changed. */
  readonly given: string | null
  readonly heading: RefObject<HTMLHeadingElement | null>
  readonly problem: Error | null
  readonly onOutcome: (outcome: string) => void
  readonly onMeasured: (typed: string) => void
  readonly onLeave: (left: 'skipped' | 'could-not-tell') => void
}

/** One check, big: its cautions first, then what to do, then its answers, each by one key. */
export function CheckCard({
  check,
  given,
  heading,
  problem,
  onOutcome,
  onMeasured,
  onLeave,
}: CheckCardProps) {
  return (
    <section className="check" aria-labelledby="check-now">
      <CautionList cautions={check.cautions} />
      <h2 id="check-now" className="check__name" ref={heading} tabIndex={-1}>
        {check.check}
      </h2>
      <p className="check__how">{check.how}</p>
      <p className="quiet">
        {wordMinutes(check.minutes)}
        {check.tools.length > 0 && ` With ${check.tools.join(', ')}.`} {competenceWords[check.competence]}
      </p>
      {given !== null && <p className="asked-sentence">It was answered: {given}. Answer it anew.</p>}
      {check.measure === null ? (
        <ul className="check__answers">
          {check.outcomes.map((outcome, at) => (
            <li key={outcome}>
              <button
                type="button"
                className="check__answer"
                aria-keyshortcuts={`${at + 1}`}
                onClick={() => onOutcome(outcome)}
              >
                <KeyHint>{`${at + 1}`}</KeyHint> {outcome}
              </button>
            </li>
          ))}
        </ul>
      ) : (
        <MeasuredField key={check.check} check={check} onMeasured={onMeasured} />
      )}
      {problem !== null && (
        <p className="problem-note" role="alert">
          {problem.message}
        </p>
      )}
      <p className="stock-acts">
        <button
          type="button"
          className="plain-button"
          aria-keyshortcuts="F6"
          onClick={() => onLeave('could-not-tell')}
        >
          Could not tell <KeyHint>F6</KeyHint>
        </button>
        <button
          type="button"
          className="plain-button"
          aria-keyshortcuts="F9"
          onClick={() => onLeave('skipped')}
        >
          Skip it <KeyHint>F9</KeyHint>
        </button>
        <button type="button" className="plain-button" aria-keyshortcuts="F8" onClick={() => window.print()}>
          Print the check sheet <KeyHint>F8</KeyHint>
        </button>
      </p>
    </section>
  )
}

/** A reading as it stands on the meter, with its unit. The guide judges it, not the eye. */
function MeasuredField({
  check: { measure, unit, expected },
  onMeasured,
}: {
  readonly check: DescribedCheck
  readonly onMeasured: (typed: string) => void
}) {
  const id = useId()
  const [typed, setTyped] = useState('')
  const onSubmit = (event: FormEvent) => {
    event.preventDefault()
    if (typed.trim() !== '') onMeasured(typed.trim())
  }
  return (
    <form className="check__measured" onSubmit={onSubmit}>
      <label htmlFor={id} className="card-field__name">
        Measured {measure}, with its unit{unit === null || unit === '' ? '' : ` (${unit})`}
      </label>
      <input
        id={id}
        className="text-field number check__reading"
        data-first-field
        autoComplete="off"
        spellCheck={false}
        maxLength={60}
        aria-describedby={`${id}-good`}
        value={typed}
        onChange={event => setTyped(event.target.value)}
      />
      <button type="submit" className="order-button order-button--main">
        Judge it <KeyHint>Enter</KeyHint>
      </button>
      <p id={`${id}-good`} className="quiet">
        A good one: {expected}.
      </p>
    </form>
  )
}
