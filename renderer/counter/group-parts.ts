import type { FittingPart } from '../../shared-schemas/fit-check.ts'

export interface PartGroup {
  readonly parts: readonly FittingPart[]
  /** The verdict and the reasoning that all of them share, as the first one has it. */
  readonly shared: FittingPart
}

/** Parts that stand or fall for the very same reasons, together, so that the reasons are read once. */
export function groupParts(parts: readonly FittingPart[]): readonly PartGroup[] {
  const groups = Map.groupBy(parts, ({ verdict, reasons, ask, alsoNeeds, cautions }) =>
    JSON.stringify([verdict, reasons, ask, alsoNeeds, cautions]),
  )
  return [...groups.values()].flatMap(ofGroup => {
    const [shared] = ofGroup
    return shared === undefined ? [] : [{ parts: ofGroup, shared }]
  })
}
