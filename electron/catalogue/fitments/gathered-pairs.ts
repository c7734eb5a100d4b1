import type { TermsChange } from './write-fitments.ts'

/**
 * Pairs of a model and a group, millions of them in the order in which they came. Neighbours are mostly of one group, so
 * a pair takes four bytes, and eight more where the group is another.
 */
export class GatheredPairs {
  readonly #models: Uint32Array[] = []
  /** Where each run of one group begins, and which it is. */
  #starts = new Uint32Array(1024)
  #groups = new Uint32Array(1024)
  #runs = 0
  #size = 0

  get size(): number {
    return this.#size
  }

  /** Adds a pair and gives its place. */
  add(modelId: number, group: number): number {
    const place = this.#size
    const at = place & blockMask
    if (at === 0) this.#models.push(new Uint32Array(blockMask + 1))
    ;(this.#models[place >>> blockBits] as Uint32Array)[at] = modelId
    if (this.#runs === 0 || this.#groups[this.#runs - 1] !== group) this.#beginRun(place, group)
    this.#size = place + 1
    return place
  }

  #beginRun(place: number, group: number): void {
    if (this.#runs === this.#starts.length) {
      this.#starts = twiceAsLong(this.#starts)
      this.#groups = twiceAsLong(this.#groups)
    }
    this.#starts[this.#runs] = place
    this.#groups[this.#runs] = group
    this.#runs += 1
  }

  modelAt(place: number): number {
    return this.#models[place >>> blockBits]?.[place & blockMask] as number
  }

  groupAt(place: number): number {
    let [low, high] = [0, this.#runs]
    while (low < high) {
      const middle = (low + high) >>> 1
      if ((this.#starts[middle] as number) <= place) low = middle + 1
      else high = middle
    }
    return this.#groups[low - 1] as number
  }

  /** Neighbours of one group: from a place to before another, a few thousand at most, so that work can pause between. */
  *runs(): Generator<{ readonly group: number; readonly from: number; readonly to: number }> {
    for (let run = 0; run < this.#runs; run += 1) {
      const group = this.#groups[run] as number
      const end = run + 1 < this.#runs ? (this.#starts[run + 1] as number) : this.#size
      for (let from = this.#starts[run] as number; from < end; from += mostOfRun)
        yield { group, from, to: Math.min(end, from + mostOfRun) }
    }
  }

  clear(): void {
    this.#models.length = 0
    this.#starts = new Uint32Array(1024)
    this.#groups = new Uint32Array(1024)
    this.#runs = 0
    this.#size = 0
  }

  /** The pairs as changes that say them, where each group is terms. */
  asSaid(): TermsChange[] {
    return this.#byGroup().map(([termsId, models]) => ({
      termsId,
      said: onceEach(models),
      withdrawn: new Uint32Array(),
    }))
  }

  /** The pairs as changes that withdraw them, where each group is terms. */
  asWithdrawn(): TermsChange[] {
    return this.#byGroup().map(([termsId, models]) => ({
      termsId,
      said: new Uint32Array(),
      withdrawn: onceEach(models),
    }))
  }

  #byGroup(): (readonly [group: number, models: Uint32Array])[] {
    const counts = new Map<number, number>()
    for (const { group, from, to } of this.runs()) counts.set(group, (counts.get(group) ?? 0) + to - from)
    const filled = new Map(
      [...counts]
        .sort(([one], [other]) => one - other)
        .map(([group, count]): [number, Filling] => [group, { models: new Uint32Array(count), next: 0 }]),
    )
    for (const { group, from, to } of this.runs()) {
      const into = filled.get(group)
      if (into === undefined) throw new Error('every group was counted')
      for (let place = from; place < to; place += 1) {
        into.models[into.next] = this.modelAt(place)
        into.next += 1
      }
    }
    return [...filled].map(([group, { models }]) => [group, models] as const)
  }
}

interface Filling {
  readonly models: Uint32Array
  next: number
}

const blockBits = 16
const blockMask = (1 << blockBits) - 1
const mostOfRun = 4096

function twiceAsLong(numbers: Uint32Array): Uint32Array<ArrayBuffer> {
  const longer = new Uint32Array(numbers.length * 2)
  longer.set(numbers)
  return longer
}

/** Ascending and each once, in the same memory. Lists mostly come sorted, and then nothing is moved. */
export function onceEach(ids: Uint32Array): Uint32Array {
  if (isStrictlyAscending(ids)) return ids
  ids.sort()
  let kept = 0
  for (let at = 0; at < ids.length; at += 1) {
    const id = ids[at] as number
    if (kept > 0 && ids[kept - 1] === id) continue
    ids[kept] = id
    kept += 1
  }
  return ids.subarray(0, kept)
}

function isStrictlyAscending(ids: Uint32Array): boolean {
  for (let at = 1; at < ids.length; at += 1) if ((ids[at] as number) <= (ids[at - 1] as number)) return false
  return true
}
