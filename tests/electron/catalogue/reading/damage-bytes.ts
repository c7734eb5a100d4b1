import type { Encoding } from '../../../../shared-schemas/supplier-layouts.ts'

/** Random numbers from a seed (mulberry32 by T. Ettinger, in the public domain): the same files on every machine. */
export function seededRandom(seed: number): (below: number) => number {
  let state = seed >>> 0
  return below => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state)
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed
    return Math.floor((((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296) * below)
  }
}

type Random = (below: number) => number
type Damage = (bytes: Buffer, random: Random) => Buffer

const inserted = [
  '"',
  '""',
  '"\n',
  '\0',
  '\0\0',
  '\r',
  '\n',
  ';',
  ',',
  '\t',
  '|',
  "'",
  '\u{feff}',
  'sep=;\n',
  'ü',
  '=1+1',
  '\\',
]

/** What happens to files on their way: a bit turns, the end is missing, a part is lost, comes twice or is of another encoding. */
const damages: readonly Damage[] = [
  (bytes, random) => replaceAt(bytes, random(bytes.length), [random(256)]),
  (bytes, random) => {
    const at = random(bytes.length)
    return replaceAt(bytes, at, [(bytes[at] ?? 0) ^ (1 << random(8))])
  },
  (bytes, random) => bytes.subarray(0, random(bytes.length)),
  (bytes, random) => bytes.subarray(random(bytes.length)),
  (bytes, random) => insertAt(bytes, random(bytes.length), pick(inserted, random)),
  (bytes, random) => insertAt(bytes, random(bytes.length), '"'),
  (bytes, random) => {
    const at = random(bytes.length)
    return Buffer.concat([bytes.subarray(0, at), bytes.subarray(at + 1 + random(20))])
  },
  (bytes, random) => {
    const at = random(bytes.length)
    return Buffer.concat([bytes.subarray(0, at), bytes.subarray(Math.max(0, at - random(60)))])
  },
  (bytes, random) =>
    Buffer.concat([bytes, Buffer.from('0048-0121;für;1,50\n', pick(['latin1', 'utf16le', 'utf8'], random))]),
  (bytes, random) =>
    Buffer.concat([
      Buffer.from(
        pick(
          [
            [0xff, 0xfe],
            [0xef, 0xbb, 0xbf],
            [0xfe, 0xff],
          ],
          random,
        ),
      ),
      bytes,
    ]),
]

/** One to three damages. */
export function damageBytes(bytes: Buffer, random: Random): Buffer {
  let damaged = bytes
  for (let left = 1 + random(3); left > 0 && damaged.length > 0; left -= 1)
    damaged = pick(damages, random)(damaged, random)
  return damaged
}

function replaceAt(bytes: Buffer, at: number, by: readonly number[]): Buffer {
  return Buffer.concat([bytes.subarray(0, at), Buffer.from(by), bytes.subarray(at + by.length)])
}

function insertAt(bytes: Buffer, at: number, text: string): Buffer {
  return Buffer.concat([bytes.subarray(0, at), Buffer.from(text, 'utf8'), bytes.subarray(at)])
}

export function pick<Value>(values: readonly Value[], random: Random): Value {
  const value = values[random(values.length)]
  if (value === undefined) throw new Error('there is something to pick from')
  return value
}

export function encodeText(text: string, encoding: Encoding): Buffer {
  if (encoding === 'utf-16le') return Buffer.from(text, 'utf16le')
  if (encoding === 'utf-16be') return Buffer.from(text, 'utf16le').swap16()
  return Buffer.from(text, encoding === 'windows-1252' ? 'latin1' : 'utf8')
}
