import { numberKey } from './catalogue-rows.ts'
import type { KindAttribute } from './family-kinds/family-kind.ts'
import { inventedBrands, patternMakers } from './invented-brands.ts'
import type { SampleFamily } from './make-families.ts'
import { makeInStoreGtin } from './make-gtin.ts'
import { listPlanted } from './planted-rows.ts'
import { hashText, itemAt, type SeededRandom, seededRandom } from './seeded-random.ts'

export type SamplePart = {
  readonly partNumber: string
  readonly family: string
  readonly maker: string
  readonly kind: 'genuine' | 'pattern'
  readonly description: string
  readonly gtin: string
  /** What the part states, by attribute. */
  readonly states: ReadonlyMap<string, string>
  /** In pence, for one. */
  readonly costPence: number
  /** The number that this one gave way to; empty while it is supplied. */
  readonly replacedBy: string
  readonly isPlanted: boolean
}

/** Every part: planted ones, then for each value a family decides by two genuine parts and one or two pattern parts, then old numbers. */
export function makeParts(families: readonly SampleFamily[]): SamplePart[] {
  const taken = new Set<string>()
  const planted = listPlantedParts(families)
  for (const part of planted) taken.add(numberKey(part.partNumber))
  const numbers = startNumbering(taken)
  const supplied = families.flatMap(family => makeFamilyParts(family, numbers))
  const old = supplied.flatMap(part => makeOldNumbers(part, numbers))
  return [...planted, ...supplied, ...old].map((part, index) => ({
    ...part,
    gtin: index % 10 < 7 ? makeInStoreGtin(1_000_000 + index * 37) : '',
  }))
}

export function readStates(text: string): Map<string, string> {
  const pairs = text.split(';').filter(pair => pair !== '')
  return new Map(pairs.map(pair => [pair.slice(0, pair.indexOf('=')), pair.slice(pair.indexOf('=') + 1)]))
}

export function writeStates(states: ReadonlyMap<string, string>): string {
  return [...states].map(([attribute, value]) => `${attribute}=${value}`).join(';')
}

type Numbering = (maker: string) => string

function startNumbering(taken: Set<string>): Numbering {
  const makers = new Map<string, (count: number) => string>()
  for (const { brand, partNumber } of inventedBrands) makers.set(brand, partNumber)
  for (const { maker, partNumber } of patternMakers) makers.set(maker, partNumber)
  const counts = new Map<string, number>()
  return maker => {
    const write = makers.get(maker)
    if (write === undefined) throw new Error(`${maker} makes no parts here`)
    for (;;) {
      const count = counts.get(maker) ?? 0
      counts.set(maker, count + 1)
      const number = write(count)
      if (taken.has(numberKey(number))) continue
      taken.add(numberKey(number))
      return number
    }
  }
}

function listPlantedParts(families: readonly SampleFamily[]): SamplePart[] {
  const byCode = new Map(families.map(family => [family.code, family]))
  const replacedBy = new Map(
    listPlanted('supersessions.csv')
      .filter(row => row.way === 'one')
      .map(row => [row.old_part, row.new_part ?? '']),
  )
  return listPlanted('parts.csv').map(row => {
    const family = byCode.get(row.family ?? '')
    return {
      partNumber: row.part_number ?? '',
      family: row.family ?? '',
      maker: row.maker ?? '',
      kind: row.kind === 'pattern' ? 'pattern' : 'genuine',
      description: row.description ?? '',
      gtin: '',
      states: readStates(row.attributes ?? ''),
      costPence: family === undefined ? 450 : costOf(family, row.kind === 'pattern', row.part_number ?? ''),
      replacedBy: replacedBy.get(row.part_number) ?? '',
      isPlanted: true,
    }
  })
}

function makeFamilyParts(family: SampleFamily, numbers: Numbering): SamplePart[] {
  const random = seededRandom(`parts of ${family.code}`)
  const deciding = family.attributes.find(
    attribute => attribute.onPlate !== true && attribute.values.length > 1,
  )
  const places = Array.from({ length: deciding?.values.length ?? 1 }, (_, place) => place)
  const made = places.flatMap(place => {
    const states = new Map(
      family.attributes.map(attribute => [
        attribute.attribute,
        itemAt(attribute.values, attribute === deciding ? place : 0),
      ]),
    )
    return pickMakers(family, place, random).map(({ maker, kind }) =>
      makePart(family, { maker, kind, states, deciding }, numbers),
    )
  })
  return [...made, ...makeImportPart(family, numbers)]
}

function pickMakers(family: SampleFamily, place: number, random: SeededRandom) {
  const brands = inventedBrands.filter(({ types }) => types.some(type => family.kind.types.includes(type)))
  const start = hashText(family.code) + place * 5
  const genuine = [0, 3].map(step => ({
    maker: itemAt(brands, start + step).brand,
    kind: 'genuine' as const,
  }))
  const howMany = random.between(1, 2)
  const pattern = Array.from({ length: howMany }, (_, index) => ({
    maker: itemAt(patternMakers, start + index).maker,
    kind: 'pattern' as const,
  }))
  return [...genuine, ...pattern]
}

type PartFacts = {
  readonly maker: string
  readonly kind: 'genuine' | 'pattern'
  readonly states: ReadonlyMap<string, string>
  readonly deciding: KindAttribute | undefined
}

function makePart(family: SampleFamily, facts: PartFacts, numbers: Numbering): SamplePart {
  const { maker, kind, states, deciding } = facts
  const partNumber = numbers(maker)
  const detail = deciding === undefined ? '' : `, ${describe(deciding, states.get(deciding.attribute) ?? '')}`
  return {
    partNumber,
    family: family.code,
    maker,
    kind,
    description: `${family.name}${detail}`,
    gtin: '',
    states,
    costPence: costOf(family, kind === 'pattern', partNumber),
    replacedBy: '',
    isPlanted: false,
  }
}

/** `12 mm bore`, `hinge side left`, `6.3 mm tab`. */
function describe(attribute: KindAttribute, value: string): string {
  if (attribute.unit !== '') return `${value} ${attribute.unit}`
  return attribute.attribute === 'terminal' ? value : `${attribute.attribute} ${value}`
}

/** Some families have a part for the few imports that run on 120 V. */
function makeImportPart(family: SampleFamily, numbers: Numbering): SamplePart[] {
  const runsOnMains = family.attributes.some(({ attribute }) => attribute === 'volts')
  if (!runsOnMains || family.form !== 0) return []
  const states = new Map(family.attributes.map(({ attribute, values }) => [attribute, itemAt(values, 0)]))
  states.set('volts', '110..127')
  if (states.has('hertz')) states.set('hertz', '60')
  const { maker } = itemAt(patternMakers, hashText(`import ${family.code}`))
  const part = makePart(family, { maker, kind: 'pattern', states, deciding: undefined }, numbers)
  return [{ ...part, description: `${family.name}, for 110 to 127 V` }]
}

/** One genuine part in nine carries one to three earlier numbers. */
function makeOldNumbers(part: SamplePart, numbers: Numbering): SamplePart[] {
  const random = seededRandom(`old numbers of ${part.partNumber}`)
  if (part.kind !== 'genuine' || !random.chance(0.11)) return []
  let replacedBy = part.partNumber
  return Array.from({ length: random.between(1, 3) }, () => {
    const partNumber = numbers(part.maker)
    const old = { ...part, partNumber, replacedBy }
    replacedBy = partNumber
    return old
  })
}

function costOf(family: SampleFamily, isPattern: boolean, partNumber: string): number {
  const [low, high] = family.kind.price
  const spread = (hashText(`cost ${partNumber}`) % 1000) / 1000
  const pounds = low + (high - low) * (isPattern ? spread * 0.4 : 0.5 + spread * 0.5)
  return Math.max(60, Math.round(pounds * 20) * 5 - 1)
}
