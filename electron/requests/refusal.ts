import type { Problem } from '../../shared-schemas/problem.ts'

/**
 * A request that is understood and must not be done. Thrown, because better-sqlite3 undoes a transaction on a
 * throw and commits on any return, a returned failure included. Only `dispatch` catches it.
 */
export class Refusal extends Error {
  readonly problem: Problem

  constructor(problem: Problem) {
    super(problem.code)
    this.name = 'Refusal'
    this.problem = problem
  }
}

/** What a rule answers: a value, or the problem that forbids it. */
export type Decided<Value> =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly problem: Problem }

/** The value of a rule's answer; throws its problem as a `Refusal`. */
export function orRefuse<Value>(decided: Decided<Value>): Value {
  if (!decided.ok) throw new Refusal(decided.problem)
  return decided.value
}
