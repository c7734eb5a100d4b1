/**
 * Which keys have a trigram: lists of ascending positions, as the gaps between them, seven bits a byte, the last byte of
 * a gap below 128. Long lists have small gaps, so that a position takes little more than a byte.
 */
export interface PostingLists {
  /** List `t` is `bytes` from `start[t]` to `start[t + 1]`. */
  readonly start: Uint32Array
  readonly bytes: Uint8Array
}

/** Whatever lists a position's own distinct list numbers into `into`, and says how many. */
export type ListNumbers = (position: number, into: Uint16Array) => number

/** The lists of `count` positions: measured once and filled once, so that each has its exact length. */
export function packPostings(
  listCount: number,
  count: number,
  { listsOf, mostOfOne }: { readonly listsOf: ListNumbers; readonly mostOfOne: number },
): PostingLists {
  const own = new Uint16Array(mostOfOne)
  const start = new Uint32Array(listCount + 1)
  const last = new Int32Array(listCount).fill(-1)
  for (let position = 0; position < count; position++) {
    const found = listsOf(position, own)
    for (let i = 0; i < found; i++) {
      const list = own[i] as number
      ;(start[list + 1] as number) += bytesOf(position - (last[list] as number) - 1)
      last[list] = position
    }
  }
  for (let list = 0; list < listCount; list++)
    start[list + 1] = (start[list + 1] as number) + (start[list] as number)
  const bytes = new Uint8Array(start[listCount] as number)
  const next = start.slice()
  last.fill(-1)
  for (let position = 0; position < count; position++) {
    const found = listsOf(position, own)
    for (let i = 0; i < found; i++) {
      const list = own[i] as number
      let gap = position - (last[list] as number) - 1
      last[list] = position
      for (; gap > 127; gap >>>= 7) bytes[(next[list] as number)++] = (gap & 127) | 128
      bytes[(next[list] as number)++] = gap
    }
  }
  return { start, bytes }
}

/** How long a list is, in bytes. */
export function postingBytes({ start }: PostingLists, list: number): number {
  return (start[list + 1] as number) - (start[list] as number)
}

/** The positions of a list. */
export function readPostings({ start, bytes }: PostingLists, list: number): Uint32Array {
  const end = start[list + 1] as number
  let at = start[list] as number
  const positions = new Uint32Array(end - at)
  let found = 0
  let position = -1
  while (at < end) {
    let gap = bytes[at++] as number
    if (gap > 127) {
      gap &= 127
      for (let shift = 7; ; shift += 7) {
        const more = bytes[at++] as number
        gap |= (more & 127) << shift
        if (more < 128) break
      }
    }
    position += gap + 1
    positions[found++] = position
  }
  return positions.subarray(0, found)
}

function bytesOf(gap: number): number {
  return gap < 128 ? 1 : gap < 16384 ? 2 : gap < 2097152 ? 3 : gap < 268435456 ? 4 : 5
}
