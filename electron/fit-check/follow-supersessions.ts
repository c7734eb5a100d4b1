import type { PartId, PartNumber } from '../../shared-schemas/identifiers.ts'
import { covers, type DaySpan } from './made-dates.ts'
import type { Replacement } from './part-dossier.ts'

/** Where a part number leads for appliances made within one span: what is supplied today, by which steps, with what else. */
export interface CurrentPart {
  readonly partId: PartId
  /** From the number asked for to the current one, both included. */
  readonly chain: readonly PartId[]
  readonly alsoNeeds: readonly PartNumber[]
}

/**
 * Follows the one-way replacements to the number supplied today. Where either of two parts replaces the other, both
 * are current, and the one asked for stays, unless its twin was replaced in its turn. The catalogue holds no loops.
 */
export function followToCurrent(
  asked: PartId,
  replacements: readonly Replacement[],
  made: DaySpan,
): CurrentPart {
  const holding = replacements.filter(replacement => covers(replacement.made, made))
  let current: CurrentPart = { partId: asked, chain: [asked], alsoNeeds: [] }
  for (;;) {
    const step = nextStep(current.partId, holding)
    if (step === undefined) return current
    current = {
      partId: step.new,
      chain: [...current.chain, ...step.through, step.new],
      alsoNeeds: [...new Set([...current.alsoNeeds, ...step.alsoNeeds])],
    }
  }
}

interface Step {
  readonly new: PartId
  readonly through: readonly PartId[]
  readonly alsoNeeds: readonly PartNumber[]
}

function nextStep(from: PartId, holding: readonly Replacement[]): Step | undefined {
  for (const twin of twinsOf(from, holding)) {
    const onward = holding.find(({ way, old }) => way === 'one' && old === twin)
    if (onward !== undefined)
      return { new: onward.new, through: twin === from ? [] : [twin], alsoNeeds: onward.alsoNeeds }
  }
  return undefined
}

/** The part itself first, then every part that is joined to it by replacements that go both ways. */
export function twinsOf(part: PartId, holding: readonly Replacement[]): PartId[] {
  const twins = [part]
  for (const twin of twins) {
    for (const { way, old, new: replacement } of holding) {
      if (way !== 'both') continue
      const other = old === twin ? replacement : replacement === twin ? old : undefined
      if (other !== undefined && !twins.includes(other)) twins.push(other)
    }
  }
  return twins
}

/** A part whose place another takes, with what must be bought besides on the way. */
export interface Predecessor {
  readonly partId: PartId
  readonly alsoNeeds: readonly PartNumber[]
}

/** Every part whose place `part` takes in appliances made within the span, itself and its twins first, each by the way that needs least. */
export function predecessorsOf(
  part: PartId,
  replacements: readonly Replacement[],
  made: DaySpan,
): readonly Predecessor[] {
  const holding = replacements.filter(replacement => covers(replacement.made, made))
  const found = new Map<PartId, Predecessor>([[part, { partId: part, alsoNeeds: [] }]])
  for (const reached of found.values()) {
    for (const { partId, alsoNeeds } of stepsBack(reached.partId, holding)) {
      const needs = [...new Set([...reached.alsoNeeds, ...alsoNeeds])]
      const known = found.get(partId)
      if (known === undefined || needs.length < known.alsoNeeds.length) {
        found.delete(partId)
        found.set(partId, { partId, alsoNeeds: needs })
      }
    }
  }
  return [...found.values()]
}

function stepsBack(part: PartId, holding: readonly Replacement[]): Predecessor[] {
  return holding.flatMap(({ old, new: replacement, way, alsoNeeds }) => {
    if (replacement === part) return [{ partId: old, alsoNeeds }]
    return way === 'both' && old === part ? [{ partId: replacement, alsoNeeds: [] }] : []
  })
}
