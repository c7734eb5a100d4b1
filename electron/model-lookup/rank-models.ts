import { alignCost, alignmentCosts, dearestSlip } from './align-keys.ts'
import { encodeKey, wholeEdit } from './fold-characters.ts'
import { brandAt, type ModelIndex, modelsCovered } from './index-models.ts'
import { type RankedKey, type RankingWishes, rankEveryKey, rankKeys, rankPositions } from './rank-keys.ts'
import type { PlateReading } from './read-plate-text.ts'

export interface RankedModel {
  /** The model's position in the index. */
  readonly position: number
  readonly cost: number
  /** The sales name's position, where the text is nearer to that than to the number. */
  readonly namePosition: number | undefined
}

export interface HowMany extends Pick<RankingWishes, 'wanted' | 'margin' | 'dearest'> {
  /** Whether every key is looked at where one that shares no trigrams with the text might be the best. */
  readonly isThorough: boolean
}

/** Whether a model may be an answer at all. */
export type Admits = (position: number) => boolean

/** The models that a reading most likely means, by number or by sales name, likeliest first; equals in the index's order. */
export function rankModels(
  index: ModelIndex,
  reading: PlateReading,
  admits: Admits,
  howMany: HowMany,
): RankedModel[] {
  const text = encodeKey(index.numbers.alphabet, reading.key)
  const surcharge = (position: number) => surchargeOf(index, reading, admits, position)
  const nameSurcharge = (name: number) => Math.min(...Array.from(modelsCovered(index, name), surcharge))
  const wishes = { ...howMany, dearest: Math.min(howMany.dearest, dearestReading(reading.key)) }
  const rank = (search: typeof rankKeys) => {
    const numbers = search(index.numbers, text, { ...wishes, surcharge })
    const names = search(index.salesNames, text, { ...wishes, surcharge: nameSurcharge })
    const ranked = joinRanked(index, admits, howMany, { numbers: numbers.ranked, names: names.ranked })
    return { ranked, unseenCost: Math.min(numbers.unseenCost, names.unseenCost) }
  }
  const { ranked, unseenCost } = rank(rankKeys)
  if (!howMany.isThorough) return ranked
  return isSettled(ranked[0]?.cost ?? Infinity, { unseenCost, ...howMany })
    ? ranked
    : rank(rankEveryKey).ranked
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
  const wishes = { wanted, margin: 0, dearest: worstCost, surcharge: () => 0 }
  const ranked: RankedModel[] = rankPositions(index.numbers, text, byNumber, wishes).map(asModel)
  for (const [position, namePosition] of open.throughName) {
    const cost = alignCost(index.salesNames, text, namePosition, worstCost)
    ranked.push({ position, namePosition, cost })
  }
  return ranked.sort(byCost(index)).slice(0, wanted)
}

/** Above every cost that an alignment can have: a text and a key have at most some hundreds of characters. */
const worstCost = 1_000_000

/** No key that was left unseen could be the best, nor be a single slip away and within the margin of the best. */
function isSettled(
  best: number,
  { unseenCost, margin }: { readonly unseenCost: number; readonly margin: number },
): boolean {
  return Math.max(best, Math.min(best + margin, dearestSlip)) <= unseenCost
}

/** At most three slips and a cut end, and never so many that little of the text would be left. */
function dearestReading(key: string): number {
  return Math.min(3 * wholeEdit + alignmentCosts.headCut, 6 * key.length)
}

/** Another brand than the one that was read off the plate. */
const otherBrand = 6

function surchargeOf(index: ModelIndex, { brand }: PlateReading, admits: Admits, position: number): number {
  if (!admits(position)) return Infinity
  return brand === undefined || brandAt(index, position) === brand ? 0 : otherBrand
}

interface RankedKeys {
  readonly numbers: readonly RankedKey[]
  readonly names: readonly RankedKey[]
}

function joinRanked(
  index: ModelIndex,
  admits: Admits,
  { wanted, margin }: HowMany,
  { numbers, names }: RankedKeys,
): RankedModel[] {
  const ranked = new Map(numbers.map(key => [key.position, asModel(key)]))
  for (const { position: namePosition, cost } of names)
    for (const position of modelsCovered(index, namePosition))
      if (admits(position) && cost < (ranked.get(position)?.cost ?? Infinity))
        ranked.set(position, { position, cost, namePosition })
  const sorted = [...ranked.values()].sort(byCost(index))
  const best = sorted[0]?.cost ?? 0
  return sorted.filter(({ cost }, place) => place < wanted || cost <= best + margin)
}

function asModel({ position, cost }: RankedKey): RankedModel {
  return { position, cost, namePosition: undefined }
}

/** Cheapest first, equals in key order. */
function byCost({ numbers: { rowAt } }: ModelIndex) {
  return (one: RankedModel, other: RankedModel) =>
    one.cost - other.cost || (rowAt[one.position] as number) - (rowAt[other.position] as number)
}
