import type { z } from 'zod'
import { type KnownRequestName, requests } from '../../shared-schemas/index.ts'
import type { Problem } from '../../shared-schemas/problem.ts'
import type { Reply } from '../../shared-schemas/request.ts'
import type { Handlers, Task } from './handlers.ts'
import { Refusal } from './refusal.ts'

/** How a defect is written down, so that the person can quote a short reference. */
export type DefectLog = (reference: string, request: string, defect: unknown) => void

export interface Dispatch {
  readonly handlers: Handlers
  readonly logDefect: DefectLog
  readonly newReference: () => string
}

const contracts = new Map<string, (typeof requests)[number]>(
  requests.map(contract => [contract.name, contract]),
)

/** Checks a request, has it handled and replies. The only place that catches; it never throws. */
export async function dispatch(
  { handlers, logDefect, newReference }: Dispatch,
  name: string,
  input: unknown,
  task: Task = quietTask,
): Promise<Reply> {
  const contract = contracts.get(name)
  if (contract === undefined) return refused({ code: 'unknown-request', request: name })
  const checked = contract.input.safeParse(input)
  if (!checked.success) return refused(malformed(name, checked.error))
  // The contract was found by this very name, so its parsed input is what that name's handler takes; TypeScript
  // cannot follow the name across the union.
  const handle = handlers[name as KnownRequestName] as (input: unknown, task: Task) => unknown
  try {
    return { ok: true, value: await handle(checked.data, task) }
  } catch (thrown) {
    if (thrown instanceof Refusal) return refused(thrown.problem)
    const reference = newReference()
    logDefect(reference, name, thrown)
    return refused({ code: 'unexpected', reference })
  }
}

const quietTask: Task = { report: () => {} }

function refused(problem: Problem): Reply {
  return { ok: false, problem }
}

function malformed(request: string, error: z.ZodError): Problem {
  const first = error.issues[0]
  return {
    code: 'malformed',
    request,
    where: first?.path.join('.') ?? '',
    why: first?.message ?? 'not readable',
  }
}
