import { alignCost, alignmentCosts, dearestSlip } from './align-keys.ts'
import { encodeKey, wholeEdit } from './fold-characters.ts'
import {
  brandNumberAt,
  compareModels,
  compareSalesNames,
  type ModelIndex,
  modelsCovered,
} from './index-models.ts'
import { layerAt } from './layered-keys.ts'
import {
  type KeySearch,
  type RankedKey,
  type RankingWishes,
  rankEveryKey,
  rankLikelyKeys,
  rankPositions,
  withinMargin,
} from './rank-keys.ts'
import type { PlateReading } from './read-plate-text.ts'

export interface RankedModel {
  /** The model's position in the index. */
  readonly position: number
  readonly cost: number
  /** The sales name's position, where the text is nearer to that than to the number. */
  readonly namePosition: number | undefined
}

/** Thorough: every key is looked at where one that shares no trigrams with the text might be a single slip away. */
export type HowMany = Pick<RankingWishes, 'wanted' | 'margin' | 'dearest' | 'isThorough'>

/** Whether a model may be an answer at all. */
export type Admits = (position: number) => boolean

/** The models that a reading most likely means, by number or by sales name, likeliest first; equals in key order. */
export function rankModels(
  index: ModelIndex,
  reading: PlateReading,
  admits: Admits,
  howMany: HowMany,
): RankedModel[] {
  const text = encodeKey(index.numbers.alphabet, reading.key)
  const surcharge = surchargeOf(index, reading, admits)
  const wishes = { ...howMany, dearest: Math.min(howMany.dearest, dearestReading(reading.key)) }
  const forNumbers = { ...wishes, surcharge, countOf: () => 1 }
  const forNames = {
    ...wishes,
    surcharge: (name: number) => Math.min(...modelsCovered(index, name).map(surcharge)),
    countOf: (name: number) => modelsCovered(index, name).filter(admits).length,
  }
  const rank = (search: KeySearch) => {
    const numbers = search(index.numbers, text, forNumbers)
    // A sales name that costs more than what the numbers gave is not wanted either.
    const names = search(index.salesNames, text, { ...forNames, dearest: numbers.limit })
    const ranked = joinRanked(index, howMany, { numbers: numbers.ranked, names: names.ranked, admits })
    return { ranked, unseenCost: Math.min(numbers.unseenCost, names.unseenCost) }
  }
  const { ranked, unseenCost } = rank(rankLikelyKeys)
  if (!howMany.isThorough || isSettled(ranked[0]?.cost ?? Infinity, { unseenCost, ...wishes })) return ranked
  return rank(rankEveryKey).ranked
}

/** The likeliest among models already known to be open, through their numbers or their sales names. */
export function rankOpenModels(
  index: ModelIndex,
  open: {
    readonly key: string
    readonly positions: readonly number[]
    readonly throughName: ReadonlyMap<number, number>
  },
  wanted: number,
): RankedModel[] {
  const text = encodeKey(index.numbers.alphabet, open.key)
  const byNumber = open.positions.filter(position => !open.throughName.has(position))
  const wishes = {
    wanted,
    margin: 0,
    dearest: worstCost,
    surcharge: () => 0,
    countOf: () => 1,
    isThorough: true,
  }
  const ranked: RankedModel[] = rankPositions(index.numbers, text, byNumber, wishes).map(asModel)
  for (const [position, namePosition] of open.throughName) {
    const { table, from } = layerAt(index.salesNames.layers, namePosition)
    const cost = alignCost(table, text, namePosition - from, worstCost)
    ranked.push({ position, namePosition, cost })
  }
  return ranked.sort(byCost(index)).slice(0, wanted)
}

/** Above every cost that an alignment can have: a text and a key have at most some hundreds of characters. */
const worstCost = 1_000_000

/**
 * No key that was left unseen could be a single slip away and the best, or within the margin of it. Where all are
 * further, which of them is the likeliest is a guess either way.
 */
function isSettled(
  best: number,
  {
    unseenCost,
    margin,
    dearest,
  }: { readonly unseenCost: number; readonly margin: number; readonly dearest: number },
): boolean {
  return Math.min(best + margin, dearestSlip, dearest) < unseenCost
}

/** At most three slips and a cut end, and never so many that little of the text would be left. */
function dearestReading(key: string): number {
  return Math.min(3 * wholeEdit + alignmentCosts.headCut, 6 * key.length)
}

/** Another brand than the one that was read off the plate. */
const otherBrand = 6

function surchargeOf(
  index: ModelIndex,
  { brand }: PlateReading,
  admits: Admits,
): (position: number) => number {
  const read = brand === undefined ? undefined : index.brands.indexOf(brand)
  return position => {
    if (!admits(position)) return Infinity
    return read === undefined || brandNumberAt(index, position) === read ? 0 : otherBrand
  }
}

interface RankedKeys {
  readonly numbers: readonly RankedKey[]
  readonly names: readonly RankedKey[]
  readonly admits: Admits
}

function joinRanked(
  index: ModelIndex,
  { wanted, margin }: HowMany,
  { numbers, names, admits }: RankedKeys,
): RankedModel[] {
  const ranked = new Map(numbers.map(key => [key.position, asModel(key)]))
  const inOrder = [...names].sort(
    (one, other) => one.cost - other.cost || compareSalesNames(index, one.position, other.position),
  )
  for (const { position: namePosition, cost } of inOrder)
    for (const position of modelsCovered(index, namePosition))
      if (admits(position) && cost < (ranked.get(position)?.cost ?? Infinity))
        ranked.set(position, { position, cost, namePosition })
  const sorted = [...ranked.values()].sort(byCost(index))
  const best = sorted[0]?.cost ?? 0
  return sorted.filter(({ cost }, place) => place < wanted || cost <= withinMargin(best, margin))
}

function asModel({ position, cost }: RankedKey): RankedModel {
  return { position, cost, namePosition: undefined }
}

/** Cheapest first, equals in key order. */
function byCost(index: ModelIndex) {
  return (one: RankedModel, other: RankedModel) =>
    one.cost - other.cost || compareModels(index, one.position, other.position)
}
