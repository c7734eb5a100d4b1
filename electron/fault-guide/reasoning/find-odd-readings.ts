import { type Belief, type Likelihoods, likelihoodOf } from './belief.ts'
import { weighCauses } from './weigh-causes.ts'

export interface OddReading {
  readonly check: string
  /** The highest probability that any cause left by the other readings gives this outcome. */
  readonly atBest: number
}

interface ReadCheck {
  readonly check: string
  readonly likelihoods: Likelihoods
}

/**
 * Readings that contradict the others: nothing that the others leave makes them likely. Each is held against the belief
 * without it, so that it is the odd one out of several that is named, whatever the order in which they were taken.
 */
export function findOddReadings(prior: Belief, readings: readonly ReadCheck[]): OddReading[] {
  return readings.flatMap(({ check, likelihoods }) => {
    const others = readings.filter(other => other.check !== check).map(other => other.likelihoods)
    const left = [...weighCauses(prior, others)].filter(([, probability]) => probability >= stillLeft)
    const atBest = Math.max(...left.map(([cause]) => likelihoodOf(likelihoods, cause)))
    return atBest < surprising ? [{ check, atBest }] : []
  })
}

/** Below this share a cause counts as ruled out by the other readings. Our choice. */
const stillLeft = 0.02
/** An outcome that every cause left gives less than this is a surprise. Our choice. */
const surprising = 0.1
