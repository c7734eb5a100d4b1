import type { LookupOutcome } from '../../shared-schemas/model-lookup.ts'
import { normaliseNumber } from '../catalogue/normalise-number.ts'
import type { Decided } from '../requests/refusal.ts'
import { type AgreeingKey, findBeginningKeys, findHoldingKeys, findWholeKeys } from './find-agreeing-keys.ts'
import { encodeKey, unreadableCode } from './fold-characters.ts'
import {
  brandNumberAt,
  compareModels,
  compareSalesNames,
  type ModelIndex,
  modelsCovered,
} from './index-models.ts'
import { type LayeredKeys, layerAt } from './layered-keys.ts'
import type { OpenModels } from './open-models.ts'
import { countReadCharacters, unreadable } from './plate-key.ts'
import { withinMargin } from './rank-keys.ts'
import { type Admits, type RankedModel, rankModels } from './rank-models.ts'
import { fewestReadable, type PlateReading, type PlateReadings, readPlateText } from './read-plate-text.ts'

export interface PlateQuestion {
  readonly text: string
  readonly brand?: string | undefined
  readonly applianceType?: string | undefined
}

/** What a plate text comes down to: how it was taken, and which models it leaves open. */
export interface SettledText {
  readonly reading: PlateReading
  readonly outcome: LookupOutcome
  readonly agreement: OpenModels['agreement']
  /** Positions in the index of the models left open, in key order. */
  readonly positions: readonly number[]
  /** By position, where a model is open because of its sales name: that name's position. */
  readonly throughName: ReadonlyMap<number, number>
  /** Where nothing agrees: the likeliest models in order, those left open first. Else none. */
  readonly nearest: readonly RankedModel[]
  /** Whether a model may be an answer to this question at all: the brand and the kind of appliance that were asked for. */
  readonly admits: Admits
}

/**
 * Settles which models a plate text leaves open. The first of these that finds any is the answer:
 *
 * 1. the models with this very key;
 * 2. the models that a sales name of this very key covers;
 * 3. every model whose number or sales name holds the text, lookalikes taken as alike; where one model's whole key is
 *    the text but for lookalikes, and none holds it as printed, that one alone;
 * 4. the models whose misreading costs at most half a slip more than the likeliest, as far as a single slip may explain
 *    it; where nothing is that near, the likeliest alone.
 *
 * Each step takes the whole text first, then the text without labels, ratings, serials and brands, then its single
 * numbers, and takes all the single numbers that agree.
 *
 * Why a "fits whichever it is" over this set can be believed. Suppose that what was typed is a stretch of the true
 * model's number, right but for lookalikes, and that the model is in the catalogue. If no model has the very key, the
 * true one is in step 3's set, because that set leaves out no model that holds the text: it is never cut to a length.
 * A model that has the very key could be passed over only for another whose longer number begins alike, which is why
 * an exact answer names the model it took. Steps 1 to 3 therefore count as agreement. Step 4 rests on a likelihood:
 * nothing agreed, some character is wrong, and its answer is marked `differs`, on which fit-check says no yes before a
 * person has confirmed the model. The margin of step 4 is such that a single slip always leaves the true model in the
 * set: it costs at most 20, and whatever nothing agrees with costs at least 12.
 */
export function settlePlateText(
  index: ModelIndex,
  question: PlateQuestion,
  { mostNearest }: { readonly mostNearest: number } = { mostNearest: 1 },
): Decided<SettledText> {
  const isName = (key: string) => positionsOfKey(index.salesNames, key).length > 0
  const readings = readPlateText(question.text, { brands: index.knownBrands, isName })
  if (countReadCharacters(readings.whole.key) < fewestReadable)
    return {
      ok: false,
      problem: { code: 'plate-text-too-short', typed: question.text, needed: fewestReadable },
    }
  const brand = question.brand === undefined ? undefined : index.knownBrands.named(question.brand)
  if (question.brand !== undefined && brand === undefined)
    return {
      ok: false,
      problem: {
        code: 'brand-not-found',
        typed: question.brand,
        nearest: index.knownBrands.nearest(question.brand),
      },
    }
  const admits = admission(index, { brand, applianceType: question.applianceType })
  const found =
    firstThatFinds(index, readings, reading => takeExact(index, reading, admits)) ??
    firstThatFinds(index, readings, reading => takeSalesName(index, reading, admits)) ??
    firstThatFinds(index, readings, reading => takeHolding(index, reading, admits)) ??
    takeNearest(index, readings, admits, mostNearest)
  return { ok: true, value: { nearest: [], ...found, outcome: outcomeOf(found), admits } }
}

type Found = Omit<SettledText, 'outcome' | 'admits' | 'nearest'> &
  Partial<Pick<SettledText, 'nearest'>> & { readonly isVeryKey: boolean }

function admission(
  index: ModelIndex,
  {
    brand,
    applianceType,
  }: { readonly brand: string | undefined; readonly applianceType: string | undefined },
): Admits {
  const wantedBrand = brand === undefined ? -1 : index.brands.indexOf(brand)
  const wantedType = applianceType === undefined ? undefined : normaliseNumber(applianceType)
  if (brand === undefined && wantedType === undefined) return () => true
  const isWanted = new Map(
    index.layers.map(layer => [
      layer,
      layer.applianceTypes.map(type => wantedType === undefined || normaliseNumber(type) === wantedType),
    ]),
  )
  return position => {
    if (wantedBrand >= 0 && brandNumberAt(index, position) !== wantedBrand) return false
    const layer = layerAt(index.layers, position)
    return isWanted.get(layer)?.[layer.applianceTypeOf[position - layer.from] as number] === true
  }
}

function outcomeOf({ positions, isVeryKey }: Found): LookupOutcome {
  if (positions.length === 0) return 'none'
  if (positions.length > 1) return 'several'
  return isVeryKey ? 'exact' : 'near'
}

/** The whole text, else what is kept of it, else all of its single numbers that find something. */
function firstThatFinds(
  index: ModelIndex,
  { whole, kept, parts }: PlateReadings,
  take: (reading: PlateReading) => Found | undefined,
): Found | undefined {
  const found = take(whole) ?? (kept.key === whole.key ? undefined : take(kept))
  if (found !== undefined) return found
  let joined: Found | undefined
  for (const part of parts) {
    // Shorter stretches of a number that already found something say less than it did.
    if (joined?.reading.key.includes(part.key)) continue
    const more = take(part)
    if (more !== undefined) joined = joined === undefined ? more : joinFound(index, joined, more)
  }
  return joined
}

function joinFound(index: ModelIndex, first: Found, second: Found): Found {
  const setAside = first.reading.setAside.filter(({ word, as }) =>
    second.reading.setAside.some(other => other.word === word && other.as === as),
  )
  return {
    ...first,
    reading: { ...first.reading, setAside },
    positions: inOrder(index, [...first.positions, ...second.positions]),
    throughName: new Map([...first.throughName, ...second.throughName]),
    agreement: first.agreement === 'agrees' ? second.agreement : first.agreement,
  }
}

function takeExact(index: ModelIndex, reading: PlateReading, admits: Admits): Found | undefined {
  const found = positionsOfKey(index.numbers, reading.key).filter(onPlate(index, reading, admits))
  if (found.length === 0) return undefined
  const positions = inOrder(index, found)
  return { reading, positions, throughName: new Map(), agreement: 'agrees', isVeryKey: true }
}

function takeSalesName(index: ModelIndex, reading: PlateReading, admits: Admits): Found | undefined {
  const names = positionsOfKey(index.salesNames, reading.key)
  const throughName = coveredBy(index, names, onPlate(index, reading, admits))
  if (throughName.size === 0) return undefined
  const positions = inOrder(index, throughName.keys())
  return { reading, positions, throughName, agreement: 'agrees', isVeryKey: true }
}

function positionsOfKey(keys: LayeredKeys, key: string): number[] {
  if (key.includes(unreadable)) return []
  return findWholeKeys(keys, encodeKey(keys.alphabet, key))
    .filter(({ isAsPrinted }) => isAsPrinted)
    .map(({ position }) => position)
}

function takeHolding(index: ModelIndex, reading: PlateReading, admits: Admits): Found | undefined {
  const mayBe = onPlate(index, reading, admits)
  const text = encodeKey(index.numbers.alphabet, reading.key)
  const numbers = holding(index.numbers, text).filter(({ position }) => mayBe(position))
  const names = holding(index.salesNames, text).filter(({ position }) =>
    modelsCovered(index, position).some(mayBe),
  )
  const isAsPrinted = [...numbers, ...names].some(key => key.isAsPrinted)
  const alone = isAsPrinted ? undefined : onlyWhole(index, text, mayBe)
  if (alone !== undefined)
    return {
      reading,
      positions: [alone],
      throughName: new Map(),
      agreement: 'confusable',
      isVeryKey: false,
    }
  const held = new Set(numbers.map(({ position }) => position))
  const throughName = coveredBy(
    index,
    names.map(({ position }) => position),
    position => mayBe(position) && !held.has(position),
  )
  if (held.size + throughName.size === 0) return undefined
  return {
    reading,
    positions: inOrder(index, [...held, ...throughName.keys()]),
    throughName,
    agreement: isAsPrinted ? 'agrees' : 'confusable',
    isVeryKey: false,
  }
}

/**
 * With unreadable characters the text is first laid over whole keys, then over their beginnings, and only then anywhere:
 * a person who marks a character as unreadable has counted it.
 */
function holding(keys: LayeredKeys, text: Uint8Array): readonly AgreeingKey[] {
  if (!text.includes(unreadableCode)) return findHoldingKeys(keys, text)
  const whole = findWholeKeys(keys, text)
  if (whole.length > 0) return whole
  const beginning = findBeginningKeys(keys, text)
  return beginning.length > 0 ? beginning : findHoldingKeys(keys, text)
}

/** The one model whose whole key is the text but for lookalikes. */
function onlyWhole(index: ModelIndex, text: Uint8Array, mayBe: Admits): number | undefined {
  const whole = findWholeKeys(index.numbers, text).filter(({ position }) => mayBe(position))
  return whole.length === 1 ? whole[0]?.position : undefined
}

/** Nothing agrees. A brand read off the plate weighs, and no longer decides: the slip may be in the brand. */
function takeNearest(
  index: ModelIndex,
  { kept, parts, guesses }: PlateReadings,
  admits: Admits,
  wanted: number,
): Found {
  let best: { reading: PlateReading; nearest: readonly RankedModel[] } = { reading: kept, nearest: [] }
  for (const reading of [kept, ...parts.slice(0, mostPartsRanked), ...guesses.slice(0, mostGuessesRanked)]) {
    const nearest = rankModels(index, reading, admits, {
      wanted,
      margin: nearMargin,
      // Another reading of the text counts only where it is nearer.
      dearest: (best.nearest[0]?.cost ?? Infinity) - 1,
      isThorough: true,
    })
    if (nearest.length > 0) best = { reading, nearest }
  }
  const { reading, nearest } = best
  const open = nearest.filter(({ cost }) => cost <= withinMargin(nearest[0]?.cost ?? 0, nearMargin))
  return {
    reading,
    nearest,
    positions: inOrder(
      index,
      open.map(({ position }) => position),
    ),
    throughName: new Map(
      open.flatMap(({ position, namePosition }) =>
        namePosition === undefined ? [] : [[position, namePosition] as const],
      ),
    ),
    agreement: 'differs',
    isVeryKey: false,
  }
}

/** Half a slip. */
const nearMargin = 8
const mostPartsRanked = 3
const mostGuessesRanked = 6

/** What is admitted and of the brand that was read off the plate. */
function onPlate(index: ModelIndex, { brand }: PlateReading, admits: Admits): Admits {
  if (brand === undefined) return admits
  const read = index.brands.indexOf(brand)
  return position => brandNumberAt(index, position) === read && admits(position)
}

function coveredBy(index: ModelIndex, names: readonly number[], mayBe: Admits): Map<number, number> {
  const covered = new Map<number, number>()
  // Of two writings of one name, with the brand before it and without, the shorter is the nearer.
  const shortestFirst = [...names].sort(
    (one, other) =>
      lengthOfName(index, one) - lengthOfName(index, other) || compareSalesNames(index, one, other),
  )
  for (const name of shortestFirst)
    for (const position of modelsCovered(index, name))
      if (mayBe(position) && !covered.has(position)) covered.set(position, name)
  return covered
}

function lengthOfName({ salesNames }: ModelIndex, name: number): number {
  const { table, from } = layerAt(salesNames.layers, name)
  return (table.start[name - from + 1] as number) - (table.start[name - from] as number)
}

/** In key order, each once. */
function inOrder(index: ModelIndex, positions: Iterable<number>): number[] {
  return [...new Set(positions)].sort((one, other) => compareModels(index, one, other))
}
