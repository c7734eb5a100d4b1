import type { Problem } from '../../shared-schemas/problem.ts'
import type { Reply } from '../../shared-schemas/request.ts'

/** The problem with which a request was refused; fails the test when it was done. */
export async function refusalOf(attempt: Promise<Reply>): Promise<Problem> {
  const reply = await attempt
  if (reply.ok) throw new Error('this should have been refused, and was done')
  return reply.problem
}
