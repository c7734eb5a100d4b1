import { alignCost, alignmentCosts, cheapestSlip, dearestSlip } from './align-keys.ts'
import { boundEdits } from './bound-edits.ts'
import { findSharing, leaveOutCommonest, trigramsOf } from './count-shared-trigrams.ts'
import { wholeEdit } from './fold-characters.ts'
import { type LayeredKeys, layerAt } from './layered-keys.ts'

export interface RankedKey {
  readonly position: number
  readonly cost: number
}

export interface RankingWishes {
  /** How many are wanted. */
  readonly wanted: number
  /** Those within this of the best, as far as a single slip may explain them, are listed beyond the wanted number. */
  readonly margin: number
  /** Whatever costs more is no reading of the text. */
  readonly dearest: number
  /** Whether none may be missed that is a single slip away and shares any trigram. */
  readonly isThorough: boolean
  /** Added to a key's cost; infinite for one that is out of the question. */
  readonly surcharge: (position: number) => number
  /** How many of the wanted a key stands for: a sales name stands for as many as it covers. */
  readonly countOf: (position: number) => number
}

export interface Ranking {
  /** In no order. More than are wanted where several cost the same. */
  readonly ranked: readonly RankedKey[]
  /** Nothing that costs more is wanted. */
  readonly limit: number
  /** No key that was left unseen could cost less. */
  readonly unseenCost: number
}

/** A way of searching keys. */
export type KeySearch = (keys: LayeredKeys, text: Uint8Array, wishes: RankingWishes) => Ranking

/**
 * The keys that the text most likely means, among those that share trigrams with it. A thorough search misses none that
 * is no further from the text than a single slip can be. Where a plain slip explains none, and those are fewer than are
 * wanted, it goes on to what two slips and more explain, while that is not too much to look at.
 */
export const rankLikelyKeys: KeySearch = (keys, text, wishes) => {
  const { isThorough } = wishes
  const ofOneSlip = mostLackingFor(dearestSlip)
  const nearLacking = isThorough ? ofOneSlip : Math.min(ofOneSlip, text.length >> 1)
  const trigrams = leaveOutCommonest(keys, trigramsOf(keys, text), nearLacking + spareTrigrams)
  const farLacking = isThorough ? trigrams.length - fewestShared(trigrams.length) : 0
  const mostLacking = Math.max(nearLacking, farLacking)
  const { lacking, othersLack } = findSharing(keys, trigrams, mostLacking)
  const shortlist = new Shortlist(wishes)
  const weigh = weigher(keys, text, wishes, shortlist)
  let seen = 0
  for (const [lacks, positions] of lacking.entries()) {
    const unseenCost = costOfLacking(lacks)
    if (unseenCost > shortlist.limit) break
    // Whole sets only: what is left out must not hang on the order in which keys happen to stand.
    const isTooMuch = seen + positions.length > mostSeen
    if (isThorough ? lacks > ofOneSlip && (isTooMuch || shortlist.best <= wholeEdit) : isTooMuch)
      return { ...shortlist.ranking(), unseenCost }
    for (const position of positions) weigh(position)
    seen += positions.length
  }
  return { ...shortlist.ranking(), unseenCost: costOfLacking(othersLack) }
}

/** The likeliest of every key, for a text so damaged or so short that it shares no trigrams with what it means. */
export const rankEveryKey: KeySearch = (keys, text, wishes) => {
  const shortlist = new Shortlist(wishes)
  const weigh = weigher(keys, text, wishes, shortlist)
  for (const { table, from, gone } of keys.layers)
    for (let place = 0; place < table.count; place++) if (gone?.[place] !== 1) weigh(from + place)
  return { ...shortlist.ranking(), unseenCost: Infinity }
}

/** The best of the keys at these positions. */
export function rankPositions(
  keys: LayeredKeys,
  text: Uint8Array,
  positions: readonly number[],
  wishes: RankingWishes,
): readonly RankedKey[] {
  const shortlist = new Shortlist(wishes)
  const weigh = weigher(keys, text, wishes, shortlist)
  for (const position of positions) weigh(position)
  return shortlist.ranking().ranked
}

/** Two slips break at most six or seven of a text's trigrams; what shares fewer than the rest is no likely reading. */
function fewestShared(trigrams: number): number {
  if (trigrams >= 11) return 4
  if (trigrams >= 10) return 3
  return trigrams >= 7 ? 2 : 1
}

/** How many trigrams are counted beyond those that may be lacking: with fewer, too many keys would share enough. */
const spareTrigrams = 2

/** Where not all must be seen, keys are looked at while they are no more than this. */
const mostSeen = 5_000

function weigher(keys: LayeredKeys, text: Uint8Array, { surcharge }: RankingWishes, shortlist: Shortlist) {
  const editsInside = boundEdits(keys.alphabet, text)
  return (position: number) => {
    const { table, from } = layerAt(keys.layers, position)
    const place = position - from
    const { limit } = shortlist
    const start = table.start[place] as number
    const end = table.start[place + 1] as number
    if (cheapestSlip * editsInside(table.codes, start, end) > limit) return
    const extra = surcharge(position)
    const cost = alignCost(table, text, place, limit - extra + 1)
    if (cost + extra <= limit) shortlist.add({ position, cost: cost + extra })
  }
}

/** What has been found so far, and above which cost nothing more is of interest. */
class Shortlist {
  readonly #wishes: RankingWishes
  readonly #found: RankedKey[] = []
  /** The lowest costs in order, as many as are wanted. */
  readonly #lowest: number[] = []
  limit: number
  /** The lowest cost so far. */
  best = Infinity

  constructor(wishes: RankingWishes) {
    this.#wishes = wishes
    this.limit = wishes.dearest
  }

  add(ranked: RankedKey): void {
    const { wanted, margin, dearest, countOf } = this.#wishes
    this.#found.push(ranked)
    const lowest = this.#lowest
    const place = lowest.findIndex(cost => cost > ranked.cost)
    const count = Math.min(wanted, countOf(ranked.position))
    for (let more = 0; more < count; more++) lowest.splice(place < 0 ? lowest.length : place, 0, ranked.cost)
    if (lowest.length > wanted) lowest.length = wanted
    this.best = lowest[0] ?? this.best
    const last = lowest.length < wanted ? dearest : (lowest.at(-1) ?? dearest)
    this.limit = Math.min(dearest, Math.max(last, withinMargin(this.best, margin)))
  }

  ranking(): Pick<Ranking, 'ranked' | 'limit'> {
    return { ranked: this.#found.filter(({ cost }) => cost <= this.limit), limit: this.limit }
  }
}

/** The most trigrams that a reading of this cost can lack. */
function mostLackingFor(cost: number): number {
  const most = lackingCosts.findLastIndex(least => least <= cost)
  return Math.max(0, most)
}

/**
 * The least cost at which a reading can lack so many of the text's trigrams. A swap breaks four, a wrong or added
 * character three, another slip two; where the key's head or tail was cut off, the padded trigram at that end is lost.
 */
function costOfLacking(lacking: number): number {
  return lackingCosts[Math.min(lacking, lackingCosts.length - 1)] as number
}

const { cutAtSegment, swapped, doubled, headCut, headCharacter, tailCut, tailCharacter } = alignmentCosts
const slips = [
  { breaks: 4, cost: swapped },
  { breaks: 3, cost: wholeEdit },
  { breaks: 2, cost: doubled },
]
const tail = tailCut + tailCharacter - cutAtSegment
const head = headCut + headCharacter - cutAtSegment
const cuts = [
  { breaks: 0, cost: 0 },
  { breaks: 1, cost: tail },
  { breaks: 1, cost: head },
  { breaks: 2, cost: tail + head },
]
const lackingCosts = cheapestToLack(64)

function cheapestToLack(most: number): number[] {
  const bySlips = [0]
  for (let lacking = 1; lacking <= most; lacking++)
    bySlips.push(
      Math.min(...slips.map(({ breaks, cost }) => (bySlips[Math.max(0, lacking - breaks)] ?? 0) + cost)),
    )
  return bySlips.map((_, lacking) =>
    Math.min(...cuts.map(({ breaks, cost }) => (bySlips[Math.max(0, lacking - breaks)] ?? 0) + cost)),
  )
}

/** Lacking no more trigrams than a single slip breaks, a reading can cost this much; whatever costs less is never missed. */
const reachOfOneSlip = costOfLacking(mostLackingFor(dearestSlip) + 1) - 1

/** The most that something within a margin of the best may cost. */
export function withinMargin(best: number, margin: number): number {
  return Math.max(best, Math.min(best + margin, reachOfOneSlip))
}
