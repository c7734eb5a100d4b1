import type { PartId, PartNumber } from '../../shared-schemas/identifiers.ts'
import type { Companion, PartDossier } from './part-dossier.ts'

/** A companion, and what provides it. Only what must be bought `besides` makes a difference to what is sold. */
export interface Together extends Companion {
  readonly from: 'besides' | 'needed-anyhow' | 'in-kit' | 'in-count'
}

export interface SuppliedPart {
  readonly partId: PartId
  /** The part and every one whose place it takes: what goes with one of those goes with it. */
  readonly standsFor: Iterable<PartId>
  /** How many one appliance takes anyhow; null where nobody says. */
  readonly perAppliance: number | null
  /** What must be bought besides because it replaces another. */
  readonly alsoNeeds: readonly PartNumber[]
}

/**
 * What goes in together with the part supplied, each number once. What comes in the part, being a kit, need not be
 * bought; nor a second piece of the part itself where the appliance takes that many anyhow.
 */
export function replaceTogether(dossier: PartDossier, supplied: SuppliedPart): Together[] {
  if (dossier.replacedTogether.size === 0) return []
  return gatherCompanions(dossier, supplied).map(companion => ({
    ...companion,
    from: provide(dossier, supplied, companion),
  }))
}

/** These numbers without those that come in the part, being a kit. */
export function withoutContents(
  { contents }: PartDossier,
  kit: PartId,
  needs: readonly PartNumber[],
): readonly PartNumber[] {
  const inKit = contents.get(kit)
  if (inKit === undefined) return needs
  return needs.filter(need => !inKit.some(({ partNumber }) => partNumber === need))
}

/** A companion that is one of the numbers which the part stands for is a further piece of the part itself. */
function gatherCompanions(
  { parts, replacedTogether }: PartDossier,
  { partId, standsFor }: SuppliedPart,
): Companion[] {
  const alike = new Set(standsFor)
  const own = parts.get(partId)
  const gathered = new Map<PartId, Companion>()
  for (const said of [...alike].flatMap(id => replacedTogether.get(id) ?? [])) {
    const isItself = alike.has(said.partId) && own !== undefined
    if (isItself && said.quantity < 2) continue
    const companion = isItself ? { ...said, partId, partNumber: own.partNumber } : said
    const known = gathered.get(companion.partId)
    if (known === undefined || known.quantity < companion.quantity)
      gathered.set(companion.partId, { ...companion, why: companion.why ?? known?.why ?? null })
  }
  return [...gathered.values()].sort((one, other) => (one.partNumber < other.partNumber ? -1 : 1))
}

function provide(
  { contents }: PartDossier,
  { partId, perAppliance, alsoNeeds }: SuppliedPart,
  companion: Companion,
): Together['from'] {
  if (companion.partId === partId) return (perAppliance ?? 1) >= companion.quantity ? 'in-count' : 'besides'
  const inKit = contents.get(partId)?.find(content => content.partId === companion.partId)
  if (inKit !== undefined && inKit.quantity >= companion.quantity) return 'in-kit'
  return alsoNeeds.includes(companion.partNumber) ? 'needed-anyhow' : 'besides'
}

/** What goes in together by every yes among these answers, each number once, with the most pieces that any of them names. */
export function gatherTogether(
  answers: readonly { readonly outcome: string; readonly together: readonly Together[] }[],
): Together[] {
  const gathered = new Map<PartId, Together>()
  for (const one of answers.flatMap(({ outcome, together }) => (outcome === 'yes' ? together : []))) {
    const known = gathered.get(one.partId)
    if (known === undefined || known.quantity < one.quantity) gathered.set(one.partId, one)
  }
  return [...gathered.values()]
}

/** What is needed because the part replaces another, and not only because it goes in together with it. */
export function needsOfReplacing<Number extends string>(
  alsoNeeds: readonly Number[],
  together: readonly Together[],
): readonly Number[] {
  const besides = new Set<string>(
    together.filter(({ from }) => from === 'besides').map(({ partNumber }) => partNumber),
  )
  return alsoNeeds.filter(need => !besides.has(need))
}
