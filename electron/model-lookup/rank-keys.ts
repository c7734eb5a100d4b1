import { alignCost, alignmentCosts, cheapestSlip } from './align-keys.ts'
import { boundEdits } from './bound-edits.ts'
import { countSharedTrigrams } from './count-shared-trigrams.ts'
import { wholeEdit } from './fold-characters.ts'
import type { KeyTable } from './key-table.ts'

export interface RankedKey {
  readonly position: number
  readonly cost: number
}

export interface RankingWishes {
  /** How many are wanted. */
  readonly wanted: number
  /** Those within this of the best are listed beyond the wanted number. */
  readonly margin: number
  /** Whatever costs more is no reading of the text. */
  readonly dearest: number
  /** Added to a key's cost; infinite for one that is out of the question. */
  readonly surcharge: (position: number) => number
}

export interface Ranking {
  readonly ranked: readonly RankedKey[]
  /** No key that was left unseen could cost less. */
  readonly unseenCost: number
}

/**
 * The keys that the text most likely means, cheapest misreading first, equals in key order. Looks at keys that share
 * trigrams with the text and stops where no other key of those could still win. Keys that share too few are left
 * unseen; `rankEveryKey` sees them.
 */
export function rankKeys(table: KeyTable, text: Uint8Array, wishes: RankingWishes): Ranking {
  const { positions, lacking, othersLack } = countSharedTrigrams(table, text)
  const shortlist = new Shortlist(table, wishes)
  const weigh = weigher(table, text, wishes, shortlist)
  for (let at = 0; at < positions.length; at++) {
    if (costOfLacking(lacking[at] as number) > shortlist.limit) break
    weigh(positions[at] as number)
  }
  return { ranked: shortlist.ranked(), unseenCost: costOfLacking(othersLack) }
}

/** The same over every key, for a text so damaged or so short that it shares no trigrams with what it means. */
export function rankEveryKey(table: KeyTable, text: Uint8Array, wishes: RankingWishes): Ranking {
  const shortlist = new Shortlist(table, wishes)
  const weigh = weigher(table, text, wishes, shortlist)
  for (let position = 0; position < table.count; position++) weigh(position)
  return { ranked: shortlist.ranked(), unseenCost: Infinity }
}

/** The best of the keys at these positions. */
export function rankPositions(
  table: KeyTable,
  text: Uint8Array,
  positions: readonly number[],
  wishes: RankingWishes,
): RankedKey[] {
  const shortlist = new Shortlist(table, wishes)
  const weigh = weigher(table, text, wishes, shortlist)
  for (const position of positions) weigh(position)
  return shortlist.ranked()
}

function weigher(table: KeyTable, text: Uint8Array, { surcharge }: RankingWishes, shortlist: Shortlist) {
  const editsInside = boundEdits(table.alphabet, text)
  return (position: number) => {
    const extra = surcharge(position)
    const allowed = shortlist.limit - extra
    const from = table.start[position] as number
    const to = table.start[position + 1] as number
    if (cheapestSlip * editsInside(table.codes, from, to) > allowed) return
    const cost = alignCost(table, text, position, allowed + 1)
    if (cost <= allowed) shortlist.add({ position, cost: cost + extra })
  }
}

/** What has been found so far, and above which cost nothing more is of interest. */
class Shortlist {
  readonly #wishes: RankingWishes
  readonly #rowAt: Uint32Array
  readonly #found: RankedKey[] = []
  /** The lowest costs in order, as many as are wanted. */
  readonly #lowest: number[] = []
  limit: number

  constructor({ rowAt }: KeyTable, wishes: RankingWishes) {
    this.#rowAt = rowAt
    this.#wishes = wishes
    this.limit = wishes.dearest
  }

  add(ranked: RankedKey): void {
    const { wanted, margin, dearest } = this.#wishes
    this.#found.push(ranked)
    const place = this.#lowest.findIndex(cost => cost > ranked.cost)
    this.#lowest.splice(place < 0 ? this.#lowest.length : place, 0, ranked.cost)
    if (this.#lowest.length > wanted) this.#lowest.pop()
    const last = this.#lowest.length < wanted ? dearest : (this.#lowest.at(-1) ?? dearest)
    this.limit = Math.min(dearest, Math.max(last, (this.#lowest[0] ?? dearest) + margin))
  }

  ranked(): RankedKey[] {
    const { wanted, margin } = this.#wishes
    const sorted = this.#found.sort(
      (one, other) =>
        one.cost - other.cost ||
        (this.#rowAt[one.position] as number) - (this.#rowAt[other.position] as number),
    )
    const [best] = sorted
    if (best === undefined) return []
    return sorted.filter(({ cost }, place) => place < wanted || cost <= best.cost + margin)
  }
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
