import type {
  Companion,
  KitContent,
  ModelFacts,
  PartDossier,
  PartFacts,
  Replacement,
  Statement,
} from '../../../../electron/fit-check/part-dossier.ts'
import { attributeKey } from '../../../../electron/fit-check/part-dossier.ts'
import type { PartNumber } from '../../../../shared-schemas/identifiers.ts'
import type { PlateReadings } from '../../../../shared-schemas/plate-reading.ts'
import {
  aCompanion,
  aContent,
  aDossier,
  aFamily,
  aModel,
  aPart,
  aReplacement,
  aStatement,
  familyIdOf,
} from '../../../builders/fit-dossier.ts'

export interface Question {
  readonly dossier: PartDossier
  readonly models: readonly ModelFacts[]
  readonly plate: PlateReadings
}

/** Small numbers from a seed (mulberry32, a public-domain generator by T. Ettinger; from memory). The same seed asks the same. */
export function seededPicker(seed: number) {
  let state = seed >>> 0
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state)
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296
  }
  const below = (count: number): number => Math.floor(next() * count)
  return {
    below,
    chance: (share: number) => next() < share,
    pick: <Item>(items: readonly Item[]): Item => items[below(items.length)] as Item,
  }
}
type Picker = ReturnType<typeof seededPicker>

/** Small and nasty: chains, twins, dated branches, exclusions over inclusions, split serials, missing readings. */
export function generateQuestion(seed: number): Question {
  const from = seededPicker(seed)
  const parts = Array.from({ length: 1 + from.below(4) }, (_, at) => generatePart(from, at + 1))
  const differing = ['thread', 'volts'].filter(
    name => new Set(parts.map(part => part.attributes.get(name)).filter(Boolean)).size > 1,
  )
  const statements = Array.from({ length: from.below(6) }, (_, at) =>
    generateStatement(from, at + 1, parts.length),
  )
  const dossier = aDossier({
    parts,
    family: aFamily({
      safetyDevice: from.chance(0.1),
      differing: new Set(differing),
      attributes: [
        { attribute: 'thread', unit: '', rule: 'equal', tolerance: null },
        { attribute: 'volts', unit: 'V', rule: 'equal', tolerance: null },
      ],
    }),
    replacements: generateReplacements(from, parts.length),
    statements,
    ...generateCompany(from, parts.length),
  })
  return { dossier, models: generateModels(from, statements), plate: generatePlate(from) }
}

export const dates = ['2010', '2012-03', '2014-06', '2014-06-15', '2016'] as const
export const threads = ['A', 'B', 'C'] as const
export const volts = ['120', '230', '400'] as const
const largestSerial = 12

function generatePart(from: Picker, id: number): PartFacts {
  const attributes = new Map<string, string>()
  if (from.chance(0.3)) attributes.set('thread', from.pick(threads.slice(0, 2)))
  if (from.chance(0.3)) attributes.set('volts', from.pick(volts.slice(0, 2)))
  return aPart(id, { attributes })
}

/** Only from a lower to a higher number, so that there is never a loop; a pair goes one way or both, not twice. */
function generateReplacements(from: Picker, count: number): Replacement[] {
  const made: Replacement[] = []
  for (let old = 1; old < count; old++)
    for (let next = old + 1; next <= count; next++)
      if (from.chance(0.4))
        made.push(
          aReplacement(old, next, {
            way: from.chance(0.25) ? 'both' : 'one',
            made: from.chance(0.4) ? generateRange(from) : {},
            alsoNeeds: from.chance(0.25) ? [`K${next}`] : [],
          }),
        )
  return isLoopFree(made) ? made : []
}

/** The catalogue refuses a part that is replaced by its own twin, directly or through others. */
function isLoopFree(made: readonly Replacement[]): boolean {
  const twin = new Map<number, number>()
  const find = (id: number): number => {
    const up = twin.get(id) ?? id
    return up === id ? id : find(up)
  }
  for (const step of made) if (step.way === 'both') twin.set(find(step.old), find(step.new))
  const onward = made
    .filter(step => step.way === 'one')
    .map(step => [find(step.old), find(step.new)] as const)
  const reaches = (start: number, goal: number, depth = 0): boolean =>
    depth > 8 ||
    onward.some(([old, next]) => old === start && (next === goal || reaches(next, goal, depth + 1)))
  return onward.every(([old, next]) => old !== next && !reaches(next, old))
}

/** Pairs, companions and kits: of the parts themselves, of what replacements need, and of things besides. */
function generateCompany(from: Picker, count: number) {
  const others = [...Array.from({ length: count }, (_, at) => at + 1), 102, 103, 104, 107]
  const replacedTogether: Record<number, Companion[]> = {}
  const contents: Record<number, KitContent[]> = {}
  for (let id = 1; id <= count; id++) {
    if (from.chance(0.2))
      replacedTogether[id] = takeSome(from, others).map(other =>
        aCompanion(other, {
          partNumber: numberOf(other),
          quantity: (other === id ? 2 : 1) + from.below(2),
        }),
      )
    if (from.chance(0.2))
      contents[id] = takeSome(
        from,
        others.filter(other => other > id),
      ).map(other => ({ ...aContent(other, 1 + from.below(2)), partNumber: numberOf(other) }))
  }
  return { replacedTogether, contents }
}

function takeSome(from: Picker, items: readonly number[]): number[] {
  return items.filter(() => from.chance(0.4))
}

/** What replacements need is called K2 to K4. */
function numberOf(id: number): PartNumber {
  return (id < 100 ? `P${id}` : `K${id - 100}`) as PartNumber
}

function generateRange(from: Picker): { from?: string; to?: string } {
  const first = from.below(dates.length)
  const last = first + from.below(dates.length - first)
  const ends = from.below(3)
  return {
    ...(ends === 1 ? {} : { from: dates[first] as string }),
    ...(ends === 0 ? {} : { to: dates[last] as string }),
  }
}

function generateStatement(from: Picker, termsId: number, partCount: number): Statement {
  const serialFrom = 2 + from.below(8)
  return aStatement(termsId, {
    ...(from.chance(0.5) ? { part: 1 + from.below(partCount) } : {}),
    says: from.chance(0.25) ? 'excludes' : 'includes',
    made: from.chance(0.4) ? generateRange(from) : {},
    serial: from.chance(0.25)
      ? { from: String(serialFrom), to: String(serialFrom + from.below(10 - serialFrom)) }
      : null,
    position: from.chance(0.2) ? from.pick(['left', 'right']) : null,
    quantity: from.chance(0.5) ? 1 + from.below(3) : null,
  })
}

function generateModels(from: Picker, statements: readonly Statement[]): ModelFacts[] {
  const keys = ['WA1', 'WA2', 'WB1', 'WB2', 'XB2', 'WA1']
  const count = from.chance(0.4) ? 1 : 1 + from.below(keys.length)
  return keys.slice(0, count).map((key, at) => {
    const stated = new Map<string, string>()
    if (from.chance(0.3)) stated.set(attributeKey(familyIdOf(1), 'thread'), from.pick(threads))
    return aModel(key, {
      modelId: at + 1,
      brand: at === 5 ? 'Norrvik' : 'Velmara',
      made: from.chance(0.4) ? generateRange(from) : {},
      volts: from.chance(0.6) ? from.pick(volts) : null,
      stated,
      terms: statements.filter(() => from.chance(0.7)).map(({ termsId }) => termsId),
    })
  })
}

function generatePlate(from: Picker): PlateReadings {
  return {
    ...(from.chance(0.4) ? { made: from.pick([...dates, '2013', '2014', '2014-07-01']) } : {}),
    ...(from.chance(0.4) ? { serial: String(1 + from.below(largestSerial)) } : {}),
    ...(from.chance(0.3) ? { volts: from.pick(volts) } : {}),
    ...(from.chance(0.2) ? { measured: { thread: from.pick(threads) } } : {}),
  }
}
