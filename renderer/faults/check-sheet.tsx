import type { OfferedCheck, WeighedFaults } from '../../shared-schemas/fault-finding.ts'
import {
  competenceWords,
  nameRemedy,
  wordAnswer,
  wordMinutes,
  wordShare,
} from '../../shared-schemas/word-faults.ts'

interface CheckSheetProps {
  readonly weighed: WeighedFaults
  readonly model: string
}

/** The checks that are left on paper, for the van: seen only when it is printed. Best first, with room for what was found. */
export function CheckSheet({ weighed, model }: CheckSheetProps) {
  const { applianceType, symptom, answers, checks, remedies } = weighed
  return (
    <section className="check-sheet" aria-label="Check sheet" aria-hidden="true">
      <h2 className="check-sheet__title">Check sheet: {symptom}</h2>
      <p>
        {applianceType}, model <span className="number">{model === '' ? '____________________' : model}</span>
        , job ____________, date ____________, initials ______
      </p>
      <ul className="check-sheet__cautions">
        {listCautions(checks).map(text => (
          <li key={text}>{text}</li>
        ))}
      </ul>
      {answers.length > 0 && (
        <p>
          Found so far: {answers.map(answer => `${answer.asked.check}: ${wordAnswer(answer)}`).join('; ')}.
        </p>
      )}
      <ol className="check-sheet__checks">
        {checks.map(check => (
          <CheckLine key={check.check} check={check} />
        ))}
      </ol>
      <p>
        Likely so far:{' '}
        {remedies
          .slice(0, 4)
          .map(remedy => `${nameRemedy(remedy)} (${wordShare(remedy.probability)})`)
          .join('; ')}
        .
      </p>
      <p>What was wrong: ________________________________________________</p>
    </section>
  )
}

function CheckLine({ check }: { readonly check: OfferedCheck }) {
  return (
    <li className="check-sheet__check">
      <strong>{check.check}</strong> {check.how}{' '}
      {check.competence !== 'anyone' && competenceWords[check.competence]} {wordMinutes(check.minutes)}
      <span className="check-sheet__found">
        {check.measure === null
          ? check.outcomes.map(outcome => `☐ ${outcome}`).join('   ')
          : `Measured ____________ ${check.unit ?? ''}   a good one: ${check.expected}`}
      </span>
    </li>
  )
}

/** Each once, in the order in which the checks name them. */
function listCautions(checks: readonly OfferedCheck[]): string[] {
  return [...new Set(checks.flatMap(({ cautions }) => cautions.map(({ text }) => text)))]
}
