import type { PartId } from '../../shared-schemas/identifiers.ts'
import type { OrderFlag } from '../../shared-schemas/order-check.ts'
import { flag } from './flag-table.ts'
import type { LineFacts } from './line-facts.ts'

/** The lines that are for one appliance; lines for stock are for none. */
export function groupByAppliance(order: readonly LineFacts[]): ReadonlyMap<string, readonly LineFacts[]> {
  return Map.groupBy(
    order.filter(({ appliance }) => appliance.kind !== 'none'),
    ({ applianceName }) => applianceName,
  )
}

/** A kit and a part that comes in it, both for the same appliance, are rarely meant, however deep in the kit it stands. */
export function flagKits(
  facts: LineFacts,
  byAppliance: ReadonlyMap<string, readonly LineFacts[]>,
): OrderFlag[] {
  if (facts.appliance.kind === 'none') return []
  const others = (byAppliance.get(facts.applianceName) ?? []).filter(other => other !== facts)
  const inside = others.filter(other => comesIn(other, facts))
  const kits = others.filter(other => comesIn(facts, other))
  return [
    ...inside.map(({ given, part }) =>
      flag(
        'kit-contains-line',
        `${part?.partNumber} on line ${given.line} comes in this kit. Take line ${given.line} out, unless more of it is meant.`,
      ),
    ),
    ...kits.map(({ given, part }) =>
      flag(
        'comes-in-ordered-kit',
        `It comes in kit ${part?.partNumber} on line ${given.line}, for the same appliance. Take this line out, unless more of it is meant.`,
      ),
    ),
  ]
}

/** What must be bought besides the kit, because too few come in it, is meant. */
function comesIn({ part, current }: LineFacts, { dossier, current: kit, companions }: LineFacts): boolean {
  if (part === undefined || kit === undefined) return false
  const isIt = (partId: PartId) => partId === part.partId || partId === current?.partId
  const isMeant = companions.some(({ partId, from }) => from === 'besides' && isIt(partId))
  return !isMeant && (dossier?.contents.get(kit.partId) ?? []).some(({ partId }) => isIt(partId))
}
