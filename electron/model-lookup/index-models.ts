import type { ModelId } from '../../shared-schemas/identifiers.ts'
import { type KeyTable, keyAt } from './key-table.ts'
import { layOutModels, type ModelLayer, type PrintedNumbers } from './lay-out-models.ts'
import { compareKeys, type LayeredKeys, layerAt } from './layered-keys.ts'
import type { OpenModel } from './open-models.ts'
import { printKey } from './printed-forms.ts'
import { type KnownBrands, listKnownBrands } from './recognise-brand.ts'

export interface CatalogueNumbers extends PrintedNumbers {
  readonly catalogueVersion: number
  /** Every brand, also one without models, in the order in which equal keys are shown. */
  readonly brands: readonly string[]
}

/** Every printed number of the catalogue, ready to be searched. A model is named by its position in `numbers`. */
export interface ModelIndex {
  readonly catalogueVersion: number
  readonly brands: readonly string[]
  readonly knownBrands: KnownBrands
  readonly layers: readonly PlacedLayer[]
  readonly numbers: LayeredKeys
  readonly salesNames: LayeredKeys
}

/** A layer among others. */
export interface PlacedLayer extends ModelLayer {
  /** The positions of its first model and of its first sales name. */
  readonly from: number
  readonly nameFrom: number
  /** The brand of each of the layer's own, as a place in the index's brands. */
  readonly brandNumbers: Uint32Array
  readonly gone: Uint8Array | undefined
}

/** The catalogue's numbers laid out for searching, in one layer. */
export function indexModels({ catalogueVersion, brands, ...numbers }: CatalogueNumbers): ModelIndex {
  return joinLayers({ catalogueVersion, brands, base: layOutModels(numbers) })
}

export interface Layers {
  readonly catalogueVersion: number
  readonly brands: readonly string[]
  readonly base: ModelLayer
  /** What takes the place of models of the base. Its alphabet is the base's, or more. */
  readonly above?: {
    readonly layer: ModelLayer
    /** The models of the base that changed or went; all that `layer` has of them counts instead. */
    readonly changed: ReadonlySet<number>
  }
}

/** One index over a layer and what changed above it: it answers as one that is laid out anew would. */
export function joinLayers({ catalogueVersion, brands, base, above }: Layers): ModelIndex {
  const gone = above === undefined ? undefined : markGone(base, above.changed)
  const placed: PlacedLayer[] = [
    { ...base, ...numberBrands(base, brands), from: 0, nameFrom: 0, gone: gone?.models },
  ]
  const numbers = [{ table: base.numbers, from: 0, gone: gone?.models }]
  const salesNames = [{ table: base.salesNames, from: 0, gone: gone?.salesNames }]
  if (above !== undefined) {
    const { layer } = above
    const from = base.numbers.count
    const nameFrom = base.salesNames.count
    placed.push({ ...layer, ...numberBrands(layer, brands), from, nameFrom, gone: undefined })
    numbers.push({ table: layer.numbers, from, gone: undefined })
    salesNames.push({ table: layer.salesNames, from: nameFrom, gone: undefined })
  }
  const alphabet = (above?.layer ?? base).numbers.alphabet
  return {
    catalogueVersion,
    brands,
    knownBrands: listKnownBrands(brands),
    layers: placed,
    numbers: layered(alphabet, numbers),
    salesNames: layered(alphabet, salesNames),
  }
}

/** How many models the index holds. */
export function countModels({ layers }: ModelIndex): number {
  let count = 0
  for (const { numbers, gone } of layers) {
    count += numbers.count
    if (gone !== undefined) for (const one of gone) count -= one
  }
  return count
}

/** One model's facts by its position. */
export function modelAt({ layers }: ModelIndex, position: number): OpenModel {
  const layer = layerAt(layers, position)
  const { numbers, brands, applianceTypes } = layer
  const place = position - layer.from
  const key = keyAt(numbers, place)
  return {
    // The ids came out of the database's model_id column, which is what the brand says.
    modelId: layer.modelIds[place] as ModelId,
    brand: brands[numbers.brandOf[place] as number] ?? '',
    modelNumber: printKey(numbers.forms, numbers.formOf[place] as number, key),
    key,
    applianceType: applianceTypes[layer.applianceTypeOf[place] as number] ?? '',
  }
}

/** A model's brand by the model's position, as a place in the index's brands. */
export function brandNumberAt({ layers }: ModelIndex, position: number): number {
  const { numbers, brandNumbers, from } = layerAt(layers, position)
  return brandNumbers[numbers.brandOf[position - from] as number] as number
}

/** Which models a sales name covers. */
export function modelsCovered({ layers }: ModelIndex, namePosition: number): number[] {
  const { covered, coveredStart, nameFrom, from, gone } = nameLayerAt(layers, namePosition)
  const place = namePosition - nameFrom
  const models: number[] = []
  for (let at = coveredStart[place] as number; at < (coveredStart[place + 1] as number); at++) {
    const model = covered[at] as number
    if (gone?.[model] !== 1) models.push(from + model)
  }
  return models
}

/** The order in which models are shown: by key, then by brand. */
export function compareModels(index: ModelIndex, one: number, other: number): number {
  return compareKeys(index.numbers, one, other) || brandNumberAt(index, one) - brandNumberAt(index, other)
}

/** Sales names by key, then by brand, then as they are divided: no two are equal unless they are parts of one. */
export function compareSalesNames(index: ModelIndex, one: number, other: number): number {
  return (
    compareKeys(index.salesNames, one, other) ||
    brandOfName(index, one) - brandOfName(index, other) ||
    separatorsOfName(index, one) - separatorsOfName(index, other)
  )
}

function brandOfName({ layers }: ModelIndex, namePosition: number): number {
  const { salesNames, brandNumbers, nameFrom } = nameLayerAt(layers, namePosition)
  return brandNumbers[salesNames.brandOf[namePosition - nameFrom] as number] as number
}

function separatorsOfName({ layers }: ModelIndex, namePosition: number): number {
  const { salesNames, nameFrom } = nameLayerAt(layers, namePosition)
  return salesNames.forms.separators[salesNames.formOf[namePosition - nameFrom] as number] as number
}

function nameLayerAt(layers: readonly PlacedLayer[], namePosition: number): PlacedLayer {
  const found = layers.findLast(({ nameFrom }) => nameFrom <= namePosition)
  if (found === undefined) throw new Error(`a sales name is in some layer, but ${namePosition} is in none`)
  return found
}

function numberBrands(layer: ModelLayer, brands: readonly string[]): Pick<PlacedLayer, 'brandNumbers'> {
  const numbers = new Map(brands.map((brand, number) => [brand, number]))
  const brandNumbers = Uint32Array.from(layer.brands, brand => {
    const number = numbers.get(brand)
    if (number === undefined) throw new Error(`every brand of a model is listed, but ${brand} is not`)
    return number
  })
  return { brandNumbers }
}

function layered(alphabet: KeyTable['alphabet'], layers: LayeredKeys['layers']): LayeredKeys {
  return { alphabet, layers: layers.map(layer => ({ ...layer, table: { ...layer.table, alphabet } })) }
}

/** A first look at a few bits of the id spares nearly every model the look into the set. */
function markGone(
  { modelIds, covered, coveredStart, salesNames }: ModelLayer,
  changed: ReadonlySet<number>,
): { readonly models: Uint8Array; readonly salesNames: Uint8Array } {
  const maybe = new Uint8Array(1 << 16)
  for (const modelId of changed) maybe[modelId & 0xffff] = 1
  const models = new Uint8Array(modelIds.length)
  for (let place = 0; place < modelIds.length; place++) {
    const modelId = modelIds[place] as number
    if (maybe[modelId & 0xffff] === 1 && changed.has(modelId)) models[place] = 1
  }
  const names = new Uint8Array(salesNames.count)
  for (let place = 0; place < names.length; place++) {
    let at = coveredStart[place] as number
    const end = coveredStart[place + 1] as number
    while (at < end && models[covered[at] as number] === 1) at++
    if (at === end) names[place] = 1
  }
  return { models, salesNames: names }
}
