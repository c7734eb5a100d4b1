import type { FamilyId, PartId, PartNumber } from '../../shared-schemas/identifiers.ts'
import type { AttributeRule } from './compare-attributes.ts'
import type { DaySpan } from './made-dates.ts'
import type { SerialRange } from './serial-ranges.ts'

/** A part as the fit check sees it. */
export interface PartFacts {
  readonly partId: PartId
  readonly partNumber: PartNumber
  readonly familyId: FamilyId
  readonly kind: 'genuine' | 'pattern'
  readonly maker: string
  readonly description: string
  readonly attributes: ReadonlyMap<string, string>
}

export interface FamilyFacts {
  readonly familyId: FamilyId
  readonly family: string
  readonly name: string
  readonly function: string
  readonly safetyDevice: boolean
  readonly hazards: readonly string[]
  readonly attributes: readonly AttributeRule[]
  /** Attributes in which the family's parts differ, so that belonging to the family does not settle them. */
  readonly differing: ReadonlySet<string>
}

/** An old part number and what takes its place in appliances made within a span. */
export interface Replacement {
  readonly old: PartId
  readonly new: PartId
  readonly way: 'one' | 'both'
  readonly made: DaySpan
  /** Parts that must be bought besides, when the new takes the old one's place. */
  readonly alsoNeeds: readonly PartNumber[]
}

/** A part that is replaced in the same job, and how many of it go in; of the part itself the whole number to fit. */
export interface Companion {
  readonly partId: PartId
  readonly partNumber: PartNumber
  readonly quantity: number
  readonly why: string | null
}

/** What comes in a kit, kits within it opened as well. */
export interface KitContent {
  readonly partId: PartId
  readonly partNumber: PartNumber
  readonly quantity: number
}

/** A kit in which a part comes, with what stands in it. */
export interface KitWith {
  readonly partNumber: PartNumber
  readonly contents: readonly KitContent[]
}

/** What one source says of a family or a part, for whichever models it is said of. */
export interface Statement {
  readonly termsId: number
  readonly says: 'includes' | 'excludes'
  readonly partId: PartId | null
  readonly familyId: FamilyId | null
  readonly made: DaySpan
  readonly serial: SerialRange | null
  readonly position: string | null
  readonly quantity: number | null
  readonly source: string
}

/** All that the catalogue holds about one part: itself, what it replaces and what replaces it, and what is said of them. */
export interface PartDossier {
  readonly asked: PartFacts
  readonly parts: ReadonlyMap<PartId, PartFacts>
  readonly families: ReadonlyMap<FamilyId, FamilyFacts>
  readonly replacements: readonly Replacement[]
  readonly statements: readonly Statement[]
  /** What is replaced together with a part; a part that goes in alone is left out. */
  readonly replacedTogether: ReadonlyMap<PartId, readonly Companion[]>
  /** What comes in each part that is a kit. */
  readonly contents: ReadonlyMap<PartId, readonly KitContent[]>
  /** The kits in which a part comes, perhaps through others. */
  readonly kitsWith: ReadonlyMap<PartId, readonly KitWith[]>
}

/** A model that the question leaves open, with the terms of the dossier that are said of it. */
export interface ModelFacts {
  readonly modelId: number
  readonly brand: string
  readonly modelNumber: string
  readonly key: string
  readonly made: DaySpan
  readonly volts: string | null
  readonly hertz: string | null
  readonly watts: string | null
  /** What is stated of this model for the attributes of families, keyed by `attributeKey`. */
  readonly stated: ReadonlyMap<string, string>
  readonly termsIds: ReadonlySet<number>
  /** When it may have been made by the date code in its serial; empty where none is read. */
  readonly madeBySerial: readonly DaySpan[]
}

export function attributeKey(familyId: FamilyId, attribute: string): string {
  return `${familyId}\u0000${attribute}`
}
