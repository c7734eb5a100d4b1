/**
 * Ascending ids as the gaps between them, each an unsigned LEB128 number: seven bits a byte, the lowest first, the top
 * bit set where more follow. Neighbours are near each other in a catalogue, so most gaps are one byte.
 */
export function encodeIds(ids: ArrayLike<number>, start = 0): Uint8Array {
  const most = ids.length * mostBytes
  const bytes = most <= scratch.length ? scratch : new Uint8Array(most)
  let [at, before] = [0, start]
  for (let index = 0; index < ids.length; index += 1) {
    const id = ids[index] as number
    at = putNumber(bytes, at, id - before)
    before = id
  }
  return bytes.slice(0, at)
}

/** Most lists are short, and a million of them are written in a row. */
const scratch = new Uint8Array(4096)

/** The ids that were encoded, from the same start. */
export function decodeIds(bytes: Uint8Array, start = 0): number[] {
  const ids: number[] = []
  let [id, gap, place] = [start, 0, 1]
  for (let at = 0; at < bytes.length; at += 1) {
    const byte = bytes[at] as number
    gap += (byte & 0x7f) * place
    if (byte >= 0x80) place *= 0x80
    else {
      id += gap
      ids.push(id)
      gap = 0
      place = 1
    }
  }
  return ids
}

/** The same into a list that is long enough, from a place on; gives how many ids there are then. */
export function decodeInto(ids: Uint32Array, count: number, bytes: Uint8Array, start: number): number {
  let [place, id, gap, shift] = [count, start, 0, 0]
  for (let at = 0; at < bytes.length; at += 1) {
    const byte = bytes[at] as number
    gap |= (byte & 0x7f) << shift
    if (byte >= 0x80) shift += 7
    else {
      id += gap
      ids[place] = id
      place += 1
      gap = 0
      shift = 0
    }
  }
  return place
}

/** Writes one number and gives the place after it. */
export function putNumber(bytes: Uint8Array, at: number, number: number): number {
  let [place, rest] = [at, number]
  while (rest >= 0x80) {
    bytes[place] = (rest & 0x7f) | 0x80
    place += 1
    rest >>>= 7
  }
  bytes[place] = rest
  return place + 1
}

/** An id is below 2^28: as many models as all makers together never had. */
export const mostBytes = 4
