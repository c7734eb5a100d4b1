import type { FaultCause, FaultCheck } from '../../shared-schemas/fault-guide.ts'

/** All that the guide says of one symptom of one appliance type, the causes and the checks as they are listed. */
export interface GuideOfSymptom {
  readonly causes: readonly FaultCause[]
  /** Those alone that tell one of the causes from the others. */
  readonly checks: readonly FaultCheck[]
}

/** How likely each outcome of a check is under a cause, in the order of its outcomes. */
export function likelihoodsUnder(check: FaultCheck, cause: string): readonly number[] {
  return check.byCause.find(said => said.cause === cause)?.likelihoods ?? check.otherwise
}
