import type { Belief, Outcome } from './belief.ts'
import { expectInformation } from './expect-information.ts'

/** A check as the choice sees it. `effort` is in minutes, above 0, with what its hazards and its tools add. */
export interface OpenCheck {
  readonly check: string
  readonly effort: number
  readonly outcomes: readonly Outcome[]
}

export interface WeighedCheck {
  readonly check: string
  readonly effort: number
  /** What it is expected to tell, in bits. */
  readonly bits: number
  readonly bitsPerMinute: number
}

/** The checks that may still tell something, the most told in a minute of effort first. */
export function rankChecks(belief: Belief, checks: readonly OpenCheck[]): WeighedCheck[] {
  return checks
    .map(({ check, effort, outcomes }) => {
      const bits = expectInformation(belief, outcomes)
      return { check, effort, bits, bitsPerMinute: bits / effort }
    })
    .filter(({ bits }) => bits >= leastBits)
    .sort((one, other) => other.bitsPerMinute - one.bitsPerMinute || (one.check < other.check ? -1 : 1))
}

/** A check that is expected to tell less is not worth walking to the machine for. Our choice. */
const leastBits = 0.02
