import { daysBetween } from '../../electron/fit-check/made-dates.ts'
import type {
  Companion,
  FamilyFacts,
  KitContent,
  KitWith,
  ModelFacts,
  PartDossier,
  PartFacts,
  Replacement,
  Statement,
} from '../../electron/fit-check/part-dossier.ts'
import type { FamilyId, PartId, PartNumber } from '../../shared-schemas/identifiers.ts'

/** Part 1 of family 1 is the one that is asked about unless a case says otherwise. */
export const partIdOf = (id: number) => id as PartId
export const familyIdOf = (id: number) => id as FamilyId

export function aPart(id: number, rest: Partial<PartFacts> = {}): PartFacts {
  return {
    partId: partIdOf(id),
    partNumber: `P${id}` as PartNumber,
    familyId: familyIdOf(1),
    kind: 'genuine',
    maker: 'Ostrel',
    description: 'inlet valve',
    attributes: new Map(),
    ...rest,
  }
}

export function aFamily(rest: Partial<FamilyFacts> = {}): FamilyFacts {
  return {
    familyId: familyIdOf(1),
    family: 'inlet-valve',
    name: 'inlet valve',
    function: 'water inlet',
    safetyDevice: false,
    hazards: [],
    attributes: [],
    differing: new Set(),
    ...rest,
  }
}

type StatedRange = { from?: string; to?: string }
type StatementCase = Partial<Omit<Statement, 'made' | 'partId' | 'familyId'>> & {
  part?: number
  made?: StatedRange
}

/** Says something of the family, or of `part` where one is named. */
export function aStatement(termsId: number, { part, made, ...rest }: StatementCase = {}): Statement {
  return {
    termsId,
    says: 'includes',
    partId: part === undefined ? null : partIdOf(part),
    familyId: part === undefined ? familyIdOf(1) : null,
    made: daysBetween(made?.from ?? null, made?.to ?? null),
    serial: null,
    position: null,
    quantity: null,
    source: 'test list',
    ...rest,
  }
}

type ReplacementCase = { way?: 'one' | 'both'; made?: StatedRange; alsoNeeds?: string[] }

export function aReplacement(
  old: number,
  replacement: number,
  { way = 'one', made, alsoNeeds = [] }: ReplacementCase = {},
): Replacement {
  return {
    old: partIdOf(old),
    new: partIdOf(replacement),
    way,
    made: daysBetween(made?.from ?? null, made?.to ?? null),
    alsoNeeds: alsoNeeds as PartNumber[],
  }
}

interface DossierCase {
  parts?: PartFacts[]
  family?: FamilyFacts
  replacements?: Replacement[]
  statements?: Statement[]
  /** By part. */
  replacedTogether?: Record<number, Companion[]>
  contents?: Record<number, KitContent[]>
  kitsWith?: Record<number, KitWith[]>
}

/** A companion, or what comes in a kit: part 7 is number P7. */
export function aCompanion(id: number, rest: Partial<Companion> = {}): Companion {
  return { partId: partIdOf(id), partNumber: `P${id}` as PartNumber, quantity: 1, why: null, ...rest }
}

export function aContent(id: number, quantity = 1): KitContent {
  return { partId: partIdOf(id), partNumber: `P${id}` as PartNumber, quantity }
}

function byPart<Item>(items: Readonly<Record<number, Item[]>> = {}): ReadonlyMap<PartId, Item[]> {
  return new Map(Object.entries(items).map(([id, listed]) => [partIdOf(Number(id)), listed]))
}

export function aDossier({ parts = [aPart(1)], family = aFamily(), ...rest }: DossierCase): PartDossier {
  const [asked] = parts
  if (asked === undefined) throw new Error('a dossier is about a part')
  return {
    asked,
    parts: new Map(parts.map(part => [part.partId, part])),
    families: new Map([[family.familyId, family]]),
    replacements: rest.replacements ?? [],
    statements: rest.statements ?? [],
    replacedTogether: byPart(rest.replacedTogether),
    contents: byPart(rest.contents),
    kitsWith: byPart(rest.kitsWith),
  }
}

type ModelCase = Partial<Omit<ModelFacts, 'made' | 'termsIds'>> & { made?: StatedRange; terms?: number[] }

/** A model of which every statement up to the twentieth is said, unless the case names its terms. */
export function aModel(key: string, { made, terms, ...rest }: ModelCase = {}): ModelFacts {
  const everyTerm = Array.from({ length: 20 }, (_, at) => at + 1)
  return {
    modelId: [...key].reduce((sum, character) => sum * 131 + character.charCodeAt(0), 7) % 1_000_003,
    brand: 'Velmara',
    modelNumber: key,
    key,
    made: daysBetween(made?.from ?? null, made?.to ?? null),
    volts: null,
    hertz: null,
    watts: null,
    stated: new Map(),
    madeBySerial: [],
    termsIds: new Set(terms ?? everyTerm),
    ...rest,
  }
}
