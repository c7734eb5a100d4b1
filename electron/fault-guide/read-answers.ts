import type { CheckAnswer, ReadAnswer } from '../../shared-schemas/fault-finding.ts'
import type { FaultCheck } from '../../shared-schemas/fault-guide.ts'
import type { Decided } from '../requests/refusal.ts'

/** An answer as the reasoning takes it, with what a reading was judged by. */
export interface SettledAnswer extends Pick<ReadAnswer, 'outcome' | 'measured' | 'left'> {
  readonly check: string
}

/** What a reading is judged as, or why it cannot be read. */
export type JudgeReading = (
  check: FaultCheck,
  typed: string,
) => Decided<{ readonly outcome: string; readonly why: string }>

/**
 * The answers to the checks of a symptom. Refused where one names a check or an outcome that the guide does not have, or
 * gives a reading that cannot be read.
 */
export function readAnswers(
  checks: readonly FaultCheck[],
  answers: readonly CheckAnswer[],
  judge: JudgeReading,
): Decided<SettledAnswer[]> {
  const settled: SettledAnswer[] = []
  for (const answer of answers) {
    const read = readAnswer(checks, answer, judge)
    if (!read.ok) return read
    const place = settled.findIndex(({ check }) => check === read.value.check)
    if (place < 0) settled.push(read.value)
    else settled[place] = read.value
  }
  return { ok: true, value: settled }
}

function readAnswer(
  checks: readonly FaultCheck[],
  answer: CheckAnswer,
  judge: JudgeReading,
): Decided<SettledAnswer> {
  const check = checks.find(known => known.check === answer.check)
  if (check === undefined) {
    const known = checks.map(one => one.check)
    return { ok: false, problem: { code: 'check-not-in-guide', typed: answer.check, known } }
  }
  const nothing = { check: check.check, outcome: null, measured: null, left: null }
  if ('left' in answer) return { ok: true, value: { ...nothing, left: answer.left } }
  if ('outcome' in answer)
    return check.outcomes.includes(answer.outcome)
      ? { ok: true, value: { ...nothing, outcome: answer.outcome } }
      : {
          ok: false,
          problem: {
            code: 'outcome-not-of-check',
            check: check.check,
            typed: answer.outcome,
            known: check.outcomes,
          },
        }
  const judged = judge(check, answer.measured)
  if (!judged.ok) return judged
  const { outcome, why } = judged.value
  return { ok: true, value: { ...nothing, outcome, measured: { typed: answer.measured, why } } }
}
