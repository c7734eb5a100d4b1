import type { FittingFamily, Verdict } from '../../shared-schemas/fit-check.ts'

export interface FamilyGroup {
  readonly function: string
  readonly families: readonly FittingFamily[]
}

/** Families under what they do, in the order given; within a group what can be sold stands first. */
export function groupFamilies(families: readonly FittingFamily[]): readonly FamilyGroup[] {
  const groups = Map.groupBy(families, family => family.function)
  return [...groups].map(([does, ofGroup]) => ({
    function: does,
    families: ofGroup.toSorted((one, other) => rank(one.verdict) - rank(other.verdict)),
  }))
}

const order: readonly Verdict[] = ['fits', 'fits-with-changes', 'ask', 'does-not-fit', 'no-record']

function rank(verdict: Verdict): number {
  return order.indexOf(verdict)
}
