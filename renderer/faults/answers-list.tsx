import type { ReadAnswer } from '../../shared-schemas/fault-finding.ts'
import { wordAnswer } from '../../shared-schemas/word-faults.ts'
import { KeyHint } from '../components/key-hint.tsx'

interface AnswersListProps {
  readonly answers: readonly ReadAnswer[]
  readonly onChange: (check: string) => void
  readonly onTakeBack: () => void
}

/** What was found so far, each to be changed; a reading that contradicts the others says so. */
export function AnswersList({ answers, onChange, onTakeBack }: AnswersListProps) {
  if (answers.length === 0) return null
  return (
    <section aria-labelledby="answers">
      <h2 id="answers" className="stock-heading">
        Found so far
      </h2>
      <ol className="answers">
        {answers.map(answer => (
          <li key={answer.asked.check} className="answers__line">
            <span>{answer.asked.check}:</span> <strong>{wordAnswer(answer)}</strong>{' '}
            <button
              type="button"
              className="link-button"
              aria-label={`Change: ${answer.asked.check}`}
              onClick={() => onChange(answer.asked.check)}
            >
              Change
            </button>
            {answer.measured !== null && <span className="answers__why quiet">{answer.measured.why}</span>}
            {answer.oddAtBest !== null && (
              <span className="answers__odd" role="note">
                <strong>This contradicts the rest.</strong> Nothing that is left explains it: at best{' '}
                {Math.max(1, Math.round(answer.oddAtBest * 100))} in 100. Make this check again before
                anything is ordered.
              </span>
            )}
          </li>
        ))}
      </ol>
      <button type="button" className="plain-button" aria-keyshortcuts="F2" onClick={onTakeBack}>
        Take the last back <KeyHint>F2</KeyHint>
      </button>
    </section>
  )
}
