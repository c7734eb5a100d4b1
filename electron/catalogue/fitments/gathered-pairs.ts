import type { TermsChange } from './write-fitments.ts'

/** Pairs of two whole numbers, millions of them in the order in which they came, at eight bytes each. */
export class GatheredPairs {
  readonly #models: Uint32Array[] = []
  readonly #groups: Uint32Array[] = []
  #size = 0

  get size(): number {
    return this.#size
  }

  /** Adds a pair and gives its place. */
  add(modelId: number, group: number): number {
    const place = this.#size
    const at = place & blockMask
    if (at === 0) {
      this.#models.push(new Uint32Array(blockMask + 1))
      this.#groups.push(new Uint32Array(blockMask + 1))
    }
    const block = place >>> blockBits
    ;(this.#models[block] as Uint32Array)[at] = modelId
    ;(this.#groups[block] as Uint32Array)[at] = group
    this.#size = place + 1
    return place
  }

  modelAt(place: number): number {
    return this.#models[place >>> blockBits]?.[place & blockMask] as number
  }

  groupAt(place: number): number {
    return this.#groups[place >>> blockBits]?.[place & blockMask] as number
  }

  clear(): void {
    this.#models.length = 0
    this.#groups.length = 0
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
    for (let place = 0; place < this.#size; place += 1) {
      const group = this.groupAt(place)
      counts.set(group, (counts.get(group) ?? 0) + 1)
    }
    const groups = [...counts].sort(([one], [other]) => one - other)
    const filled = new Map(
      groups.map(([group, count]): [number, Filling] => [group, { models: new Uint32Array(count), next: 0 }]),
    )
    for (let place = 0; place < this.#size; place += 1) {
      const into = filled.get(this.groupAt(place))
      if (into === undefined) throw new Error('every group was counted')
      into.models[into.next] = this.modelAt(place)
      into.next += 1
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
