import type { CatalogueFile, SparseRow } from '../catalogue-rows.ts'

export type ExpectedVerdict = 'fits' | 'fits-with-changes' | 'ask' | 'does-not-fit' | 'no-record'

/** One question at the counter and the only answer that is right. */
export type AwkwardQuestion = {
  readonly brand?: string
  readonly model: string
  readonly part: string
  readonly made?: string
  readonly serial?: string
  readonly volts?: string
  readonly hertz?: string
  readonly verdict: ExpectedVerdict
  /** For `ask`: the reading that decides. */
  readonly asks?: 'model-number' | 'brand' | 'made' | 'serial' | 'volts' | 'hertz' | 'watts'
  /** For `fits-with-changes`: what must be bought besides. */
  readonly alsoNeeds?: readonly string[]
  /** What is supplied today, where it is not the number asked for. */
  readonly current?: string
}

/** A situation that trips people up, planted with fixed numbers so that demonstrations and tests can rely on it. */
export type AwkwardCase = {
  readonly name: string
  readonly purpose: string
  readonly plants: { readonly [File in CatalogueFile]?: readonly SparseRow<File>[] }
  /** Families of which the ordinary catalogue must say nothing on a model, because the case turns on silence. */
  readonly silent?: readonly { readonly brand: string; readonly model: string; readonly family: string }[]
  readonly questions: readonly AwkwardQuestion[]
}

export type ModelFacts = Omit<SparseRow<'models.csv'>, 'brand' | 'model_number' | 'appliance_type'>

/** A planted model: a 220-240 V, 50 Hz machine of a known platform unless the case says otherwise. */
export function plantModel(
  brand: string,
  number: string,
  type: string,
  facts: ModelFacts = {},
): SparseRow<'models.csv'> {
  const ordinary = { made_from: '2012-03', made_to: '2014-02', volts: '220-240', hertz: '50' }
  return {
    brand,
    model_number: number,
    appliance_type: type,
    platform: `${type}-1`,
    ...ordinary,
    watts: ordinaryWatts[type] ?? '',
    ...facts,
  }
}

const ordinaryWatts: Readonly<Record<string, string>> = {
  dishwasher: '2150',
  washer: '2050',
  dryer: '2500',
  oven: '2800',
  hob: '',
  fridge: '120',
  microwave: '1350',
  vacuum: '1200',
}

export function plantPart(
  partNumber: string,
  family: string,
  maker: string,
  description: string,
  attributes = '',
  kind: 'genuine' | 'pattern' = 'genuine',
): SparseRow<'parts.csv'> {
  return { part_number: partNumber, family, maker, kind, description, attributes }
}

type Subject = { readonly family: string } | { readonly part_number: string }
type Conditions = Omit<
  SparseRow<'fitments.csv'>,
  'says' | 'family' | 'part_number' | 'brand' | 'model_number' | 'source'
>

export function includes(
  subject: Subject,
  brand: string,
  number: string,
  source: string,
  conditions: Conditions = {},
): SparseRow<'fitments.csv'> {
  return { says: 'includes', ...subject, brand, model_number: number, quantity: '1', ...conditions, source }
}

export function excludes(
  subject: Subject,
  brand: string,
  number: string,
  source: string,
  conditions: Conditions = {},
): SparseRow<'fitments.csv'> {
  return { says: 'excludes', ...subject, brand, model_number: number, ...conditions, source }
}

/** What an appliance needs of a family, one row an attribute. */
export function needs(
  brand: string,
  number: string,
  family: string,
  values: Readonly<Record<string, string>>,
): SparseRow<'model_attributes.csv'>[] {
  return Object.entries(values).map(([attribute, value]) => ({
    brand,
    model_number: number,
    family,
    attribute,
    value,
  }))
}
