import type { ProblemCode } from '../../shared-schemas/problem.ts'
import type { Reply } from '../../shared-schemas/request.ts'

/** HTTP's word for a reply: done, malformed, refused or a defect. */
export type ReplyStatus = 200 | 400 | 409 | 500

export function statusOf(reply: Reply): ReplyStatus {
  return reply.ok ? 200 : statusOfProblem(reply.problem.code)
}

function statusOfProblem(code: ProblemCode): ReplyStatus {
  if (code === 'malformed' || code === 'unknown-request') return 400
  return code === 'unexpected' ? 500 : 409
}
