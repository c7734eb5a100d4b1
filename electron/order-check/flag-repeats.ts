import type { PartId } from '../../shared-schemas/identifiers.ts'
import type { OrderFlag } from '../../shared-schemas/order-check.ts'
import { flag } from './flag-table.ts'
import type { LineFacts } from './line-facts.ts'

/** The lines of the order by what they would be delivered as, and by family for one appliance. */
export interface RepeatsOfOrder {
  readonly byPart: ReadonlyMap<PartId | undefined, readonly LineFacts[]>
  readonly byFamily: ReadonlyMap<string | undefined, readonly LineFacts[]>
}

export function groupRepeats(order: readonly LineFacts[]): RepeatsOfOrder {
  return { byPart: Map.groupBy(order, deliveredAs), byFamily: Map.groupBy(order, familyForAppliance) }
}

/**
 * The same part again, be it under an older number: for the same appliance or twice for stock that is rarely meant, for
 * two appliances it is. Another part of the family for the same appliance does the same work.
 */
export function flagRepeats(facts: LineFacts, { byPart, byFamily }: RepeatsOfOrder): OrderFlag[] {
  const { part, given, applianceName } = facts
  if (part === undefined) return []
  const others = (byPart.get(deliveredAs(facts)) ?? []).filter(other => other !== facts)
  const again = others.filter(other => other.applianceName === applianceName)
  const elsewhere = others.filter(other => other.applianceName !== applianceName)
  const family = familyForAppliance(facts)
  const alike =
    family === undefined
      ? []
      : (byFamily.get(family) ?? []).filter(other => deliveredAs(other) !== deliveredAs(facts))
  const aim = facts.appliance.kind === 'none' ? 'for stock' : 'for the same appliance'
  return [
    ...(again.length > 0
      ? [
          flag(
            'repeated-line',
            `${nameLines(again)} ${again.length === 1 ? 'orders' : 'order'} the same part ${aim}. Keep only one of ${nameLines([facts, ...again]).toLowerCase()}.`,
          ),
        ]
      : []),
    ...(elsewhere.length > 0
      ? [
          flag(
            'same-part-elsewhere',
            `The same part is on ${nameLines(elsewhere).toLowerCase()} too, not for the same appliance.`,
          ),
        ]
      : []),
    ...(alike.length > 0
      ? [
          flag(
            'interchangeable-on-order',
            `${nameLines(alike)} ${alike.length === 1 ? 'orders' : 'order'} ${[...new Set(alike.map(other => other.part?.partNumber))].join(', ')} of the same family for the same appliance. One of line ${given.line} and ${nameLines(alike).toLowerCase()} will do.`,
          ),
        ]
      : []),
  ]
}

function deliveredAs({ current }: LineFacts): PartId | undefined {
  return current?.partId
}

function familyForAppliance({ appliance, applianceName, part }: LineFacts): string | undefined {
  if (part === undefined || appliance.kind !== 'read') return undefined
  return `${part.familyId}\u0000${applianceName}`
}

function nameLines(lines: readonly LineFacts[]): string {
  const numbers = lines.map(({ given }) => given.line).sort((one, other) => one - other)
  const shown = numbers.slice(0, mostShown).join(', ')
  const more = numbers.length > mostShown ? ` and ${numbers.length - mostShown} more` : ''
  return `${numbers.length === 1 ? 'Line' : 'Lines'} ${shown}${more}`
}

const mostShown = 5
