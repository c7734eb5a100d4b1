import type { FoundModels } from '../../shared-schemas/model-lookup.ts'
import { AskProblem } from '../bridge/ask-problem.ts'
import type { PlateQuestion } from './choose-plate-question.ts'
import type { CounterEnquiry, EnquiryStep } from './counter-enquiry.ts'
import { wordNothingAsked } from './outcome-words.ts'
import type { CharacterCell, PlateCell } from './plate-cells.ts'
import { QuestionLine } from './plate-question-line.tsx'

interface PlateLineProps {
  readonly enquiry: CounterEnquiry
  readonly found: FoundModels | undefined
  /** Families are listed for what now stands, so that nothing being asked means something. */
  readonly isAnswered: boolean
  readonly cells: readonly PlateCell[]
  readonly question: PlateQuestion | null
  readonly problem: Error | null
  readonly onStep: (step: EnquiryStep) => void
  readonly onFill: (value: string) => (() => void) | undefined
}

/** What stands under the number: what to type, what to read, or how the catalogue reads it. */
export function PlateLine({
  enquiry,
  found,
  isAnswered,
  cells,
  question,
  problem,
  onStep,
  onFill,
}: PlateLineProps) {
  if (enquiry.text.trim() === '')
    return (
      <p>
        Type what can be read. <span className="number">?</span> stands for a character that cannot.
      </p>
    )
  if (isTooShort(problem)) return <p>{problem.message}</p>
  const differing = cells.filter(isDiffering)
  return (
    <>
      {question !== null && (
        <QuestionLine question={question} enquiry={enquiry} onStep={onStep} onFill={onFill} />
      )}
      {question === null && isAnswered && found !== undefined && (
        <p>{wordNothingAsked(found, enquiry.taken)}</p>
      )}
      {differing.length > 0 && <p className="plate-difference">{differing.map(wordDifference).join(' ')}</p>}
    </>
  )
}

/** Somebody has only begun to type; that is no failure. */
export function isTooShort(problem: Error | null): problem is AskProblem {
  return problem instanceof AskProblem && problem.problem.code === 'plate-text-too-short'
}

function isDiffering(cell: PlateCell): cell is CharacterCell {
  return cell.kind === 'character' && (cell.mark === 'differs' || cell.mark === 'surplus')
}

function wordDifference({ typed, catalogue, position }: CharacterCell): string {
  const read = typed.toUpperCase()
  return position === null
    ? `Typed ${read}; the catalogue has nothing there.`
    : `Typed ${read}; the catalogue reads ${catalogue} as character ${position}.`
}
