import type { CauseEnd } from '../../shared-schemas/fault-guide.ts'
import { nameCause } from './name-cause.ts'

/** What the guide proposed first for a job. */
export interface KeptProposal {
  readonly endsIn: CauseEnd
  readonly causes: readonly string[]
  readonly families: readonly string[]
}

interface EndedJob {
  readonly causeKey: string | null
  readonly cause: string | null
  readonly familiesFitted: readonly string[]
}

/**
 * Whether a proposal was right. What was fitted tells of a part; the cause that was named tells of the rest. Null where
 * neither tells, and for licensed work, which somebody else did.
 */
export function judgeProposal(
  { endsIn, causes, families }: KeptProposal,
  { causeKey, cause, familiesFitted }: EndedJob,
): boolean | null {
  if (endsIn === 'licensed') return null
  const isCauseNamed = nameCause(causes, { causeKey, cause }) !== null
  if (endsIn !== 'part') {
    if (familiesFitted.length > 0) return false
    return isCauseNamed || causeKey !== null ? isCauseNamed : null
  }
  if (familiesFitted.length > 0) return familiesFitted.some(family => families.includes(family))
  return isCauseNamed || causeKey !== null ? isCauseNamed : null
}
