import { findFault } from './check-question.ts'
import { generateQuestion } from './generate-questions.ts'

/** The faults in the answers to so many generated questions, from a first seed in steps; none, where every verdict is proved. */
export function findFaults({
  first,
  step,
  questions,
}: {
  first: number
  step: number
  questions: number
}): string[] {
  const faults: string[] = []
  for (let at = 0; at < questions && faults.length < mostFaults; at++) {
    const seed = first + at * step
    const fault = findFault(generateQuestion(seed))
    if (fault !== undefined) faults.push(`question ${seed}: ${fault}`)
  }
  return faults
}

/** Enough to begin with. */
const mostFaults = 5
