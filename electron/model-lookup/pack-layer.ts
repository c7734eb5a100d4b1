import { z } from 'zod'
import { restoreAlphabet } from './fold-characters.ts'
import { type KeyTable, type Numbers, narrowest } from './key-table.ts'
import type { ModelLayer } from './lay-out-models.ts'
import { ShareCounter } from './share-counter.ts'

/** A layer as arrays of numbers by name, to be kept as bytes: in this machine's order, which every desktop shares. */
export type LayerParts = ReadonlyMap<string, Numbers>

/** Another number whenever what the parts hold, or how, changes: an index that is kept otherwise is laid out anew. */
export const layerFormat = 1

const tableNames = z.object({
  patterns: z.array(z.string()),
  strangeKeys: z.array(z.tuple([z.int(), z.string()])),
})
const layerNames = z.object({
  brands: z.array(z.string()),
  applianceTypes: z.array(z.string()),
  alphabet: z.array(z.string()),
  numbers: tableNames,
  salesNames: tableNames,
})

/** The layer's parts. */
export function packLayer(layer: ModelLayer): LayerParts {
  const names: z.output<typeof layerNames> = {
    brands: [...layer.brands],
    applianceTypes: [...layer.applianceTypes],
    alphabet: [...layer.numbers.alphabet.others],
    numbers: namesOf(layer.numbers),
    salesNames: namesOf(layer.salesNames),
  }
  return new Map<string, Numbers>([
    ['names', new TextEncoder().encode(JSON.stringify(names))],
    ['model ids', layer.modelIds],
    ['appliance types', layer.applianceTypeOf],
    ['covered start', layer.coveredStart],
    ['covered', layer.covered],
    ...packTable('numbers', layer.numbers),
    ...packTable('sales names', layer.salesNames),
  ])
}

/** The layer of these parts: nothing is done model by model but to add up lengths. */
export function unpackLayer(parts: LayerParts): ModelLayer {
  const names = layerNames.parse(JSON.parse(new TextDecoder().decode(partOf(parts, 'names'))))
  const alphabet = restoreAlphabet(names.alphabet)
  const unpack = (table: string, named: z.output<typeof tableNames>): KeyTable => {
    const part = (name: string) => partOf(parts, `${table}: ${name}`)
    const start = addUp(part('lengths'))
    const count = start.length - 1
    return {
      alphabet,
      count,
      start,
      codes: part('codes') as Uint8Array,
      forms: { patterns: named.patterns, separators: part('separators') as Uint32Array },
      formOf: part('forms'),
      brandOf: part('brands'),
      postings: { start: part('posting starts') as Uint32Array, bytes: part('postings') as Uint8Array },
      strangeKeys: new Map(named.strangeKeys),
      counter: new ShareCounter(count),
    }
  }
  return {
    brands: names.brands,
    applianceTypes: names.applianceTypes,
    numbers: unpack('numbers', names.numbers),
    modelIds: partOf(parts, 'model ids') as Uint32Array,
    applianceTypeOf: partOf(parts, 'appliance types'),
    salesNames: unpack('sales names', names.salesNames),
    coveredStart: partOf(parts, 'covered start') as Uint32Array,
    covered: partOf(parts, 'covered') as Uint32Array,
  }
}

function namesOf({ forms, strangeKeys }: KeyTable): z.output<typeof tableNames> {
  return { patterns: [...forms.patterns], strangeKeys: [...strangeKeys] }
}

function packTable(table: string, keys: KeyTable): [string, Numbers][] {
  const lengths = Uint32Array.from(
    { length: keys.count },
    (_, place) => (keys.start[place + 1] as number) - (keys.start[place] as number),
  )
  const parts: Record<string, Numbers> = {
    lengths: narrowest(lengths),
    codes: keys.codes,
    separators: keys.forms.separators,
    forms: keys.formOf,
    brands: keys.brandOf,
    'posting starts': keys.postings.start,
    postings: keys.postings.bytes,
  }
  return Object.entries(parts).map(([name, numbers]) => [`${table}: ${name}`, numbers])
}

function partOf(parts: LayerParts, name: string): Numbers {
  const part = parts.get(name)
  if (part === undefined) throw new Error(`a kept index has every part, but ${name} is not there`)
  return part
}

function addUp(lengths: Numbers): Uint32Array {
  const start = new Uint32Array(lengths.length + 1)
  let sum = 0
  for (let place = 0; place < lengths.length; place++) {
    sum += lengths[place] as number
    start[place + 1] = sum
  }
  return start
}
