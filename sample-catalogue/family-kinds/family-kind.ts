import type { ApplianceType } from '../appliance-types.ts'

/** One thing a repairer asks for by name, in the forms it comes in. Each form is a part family of its own. */
export type FamilyKind = {
  readonly kind: string
  readonly name: string
  /** The group it is listed under, in plain words. */
  readonly does: string
  readonly types: readonly ApplianceType[]
  readonly forms: readonly string[]
  readonly hazards: readonly Hazard[]
  readonly safetyDevice: boolean
  readonly attributes: readonly KindAttribute[]
  readonly price: readonly [low: number, high: number]
  /** How much oftener than usual it wears out. */
  readonly wear: number
  /** How many one appliance takes at each position; 1 where nothing is said. */
  readonly quantity?: number
  readonly positions?: readonly string[]
  /** Hobs burn gas or are wired in, never both here: a kind that belongs to one of them says which. */
  readonly fuel?: 'gas' | 'electric'
  /** In every machine of its types; other kinds are missing from a platform here and there. */
  readonly onEveryPlatform?: true
  /** Never listed for a model: bought only because a successor needs it. */
  readonly boughtAlong?: true
}

export type Hazard =
  | 'mains'
  | 'stored-charge'
  | 'gas'
  | 'sealed-refrigerant'
  | 'microwave-hv'
  | 'fixed-wiring'
  | 'water'
  | 'hot'
  | 'sharp'
  | 'moving'

export type AttributeRule = 'equal' | 'within' | 'at-least' | 'at-most' | 'covers'

export type KindAttribute = {
  readonly attribute: string
  readonly unit: string
  readonly rule: AttributeRule
  readonly tolerance?: string
  /** What the parts state. The forms of a kind share these values out among them. */
  readonly values: readonly string[]
  /** What the appliance needs, value by value; the part's own value where nothing is said. Not for plate readings. */
  readonly needs?: readonly string[]
  readonly onPlate?: true
}

export const volts: KindAttribute = {
  attribute: 'volts',
  unit: 'V',
  rule: 'covers',
  values: ['220..240'],
  onPlate: true,
}

/** For coils and motors that run at the speed of the supply: made for one frequency only. */
export const oneHertz: KindAttribute = {
  attribute: 'hertz',
  unit: 'Hz',
  rule: 'equal',
  values: ['50'],
  onPlate: true,
}

/** For leads and plugs: the part must carry at least what the plate draws. */
export const carriesWatts: KindAttribute = {
  attribute: 'watts',
  unit: 'W',
  rule: 'at-least',
  values: ['3000'],
  onPlate: true,
}

/** Push-on tabs in the sizes of IEC 61210. */
export const terminal = (...sizes: readonly ('2.8' | '4.8' | '6.3')[]): KindAttribute => ({
  attribute: 'terminal',
  unit: '',
  rule: 'equal',
  values: sizes.map(size => `${size} mm tab`),
})

export const exact = (attribute: string, unit: string, ...values: readonly string[]): KindAttribute => ({
  attribute,
  unit,
  rule: 'equal',
  values,
})

export const within = (
  attribute: string,
  unit: string,
  tolerance: string,
  ...values: readonly string[]
): KindAttribute => ({ attribute, unit, rule: 'within', tolerance, values })

type KindFacts = Omit<FamilyKind, 'types' | 'wear' | 'safetyDevice'> &
  Partial<Pick<FamilyKind, 'wear' | 'safetyDevice'>>

/** Kinds for the same appliance types, ordinary ones unless they say otherwise. */
export function kindsFor(types: readonly ApplianceType[], facts: readonly KindFacts[]): FamilyKind[] {
  return facts.map(kind => ({ wear: 1, safetyDevice: false, ...kind, types }))
}
