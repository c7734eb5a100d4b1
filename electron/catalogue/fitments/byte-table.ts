/**
 * Numbers by the bytes that stand for them, without a string for each: a million entries take some fifty megabytes, and
 * one is found in a few hundred nanoseconds. A key is two stretches of a buffer, of which either may be empty.
 */
export class ByteTable {
  #slots = new Int32Array(1 << 12)
  #hashes = new Int32Array(1 << 11)
  #ends = new Uint32Array(1 << 11)
  #values = new Uint32Array(1 << 11)
  #bytes = new Uint8Array(1 << 16)
  #count = 0

  /** The value of a key with this hash; -1 where there is none. */
  find(bytes: Uint8Array, hash: number, a: number, b: number, c: number, d: number): number {
    const mask = this.#slots.length - 1
    for (let slot = spread(hash) & mask; ; slot = (slot + 1) & mask) {
      const entry = (this.#slots[slot] as number) - 1
      if (entry < 0) return -1
      if (this.#hashes[entry] === hash && this.#isKey(entry, bytes, a, b, c, d))
        return this.#values[entry] as number
    }
  }

  /** Adds a key that is not there. */
  add(
    bytes: Uint8Array,
    hash: number,
    [a, b, c, d]: readonly [number, number, number, number],
    value: number,
  ): void {
    if (this.#count === this.#values.length) this.#grow()
    const start = this.#count === 0 ? 0 : (this.#ends[this.#count - 1] as number)
    const end = start + (b - a) + (d - c)
    while (end > this.#bytes.length) this.#bytes = larger(this.#bytes, new Uint8Array(this.#bytes.length * 2))
    this.#bytes.set(bytes.subarray(a, b), start)
    this.#bytes.set(bytes.subarray(c, d), start + b - a)
    this.#hashes[this.#count] = hash
    this.#ends[this.#count] = end
    this.#values[this.#count] = value
    this.#count += 1
    this.#place(this.#count)
  }

  #isKey(entry: number, bytes: Uint8Array, a: number, b: number, c: number, d: number): boolean {
    let at = entry === 0 ? 0 : (this.#ends[entry - 1] as number)
    if ((this.#ends[entry] as number) - at !== b - a + (d - c)) return false
    for (let index = a; index < b; index += 1, at += 1) if (this.#bytes[at] !== bytes[index]) return false
    for (let index = c; index < d; index += 1, at += 1) if (this.#bytes[at] !== bytes[index]) return false
    return true
  }

  #place(entryAndOne: number): void {
    const mask = this.#slots.length - 1
    let slot = spread(this.#hashes[entryAndOne - 1] as number) & mask
    while (this.#slots[slot] !== 0) slot = (slot + 1) & mask
    this.#slots[slot] = entryAndOne
  }

  /** Twice the room; the slots stay at most half full. */
  #grow(): void {
    const room = this.#values.length * 2
    this.#hashes = larger(this.#hashes, new Int32Array(room))
    this.#ends = larger(this.#ends, new Uint32Array(room))
    this.#values = larger(this.#values, new Uint32Array(room))
    this.#slots = new Int32Array(room * 2)
    for (let entryAndOne = 1; entryAndOne <= this.#count; entryAndOne += 1) this.#place(entryAndOne)
  }
}

/** FNV-1a over 32 bits (Fowler, Noll and Vo; the constants are from memory): start with the basis, then byte by byte. */
export const hashBasis = 0x811c9dc5 | 0
export const hashPrime = 0x01000193

/** Its low bits alone, by which a slot is chosen, are not mixed well enough. */
function spread(hash: number): number {
  const mixed = Math.imul(hash ^ (hash >>> 16), 0x45d9f3b)
  return mixed ^ (mixed >>> 16)
}

function larger<Numbers extends Uint8Array | Int32Array | Uint32Array>(from: Numbers, to: Numbers): Numbers {
  to.set(from)
  return to
}
