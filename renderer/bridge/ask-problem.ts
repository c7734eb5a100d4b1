import type { Problem } from '../../shared-schemas/problem.ts'
import { wordProblem } from '../../shared-schemas/problem-wording.ts'

/** What `ask` throws when a request was not done: the problem as it came, with its sentence as the message. */
export class AskProblem extends Error {
  readonly problem: Problem

  constructor(problem: Problem) {
    super(wordProblem(problem))
    this.name = 'AskProblem'
    this.problem = problem
  }
}
