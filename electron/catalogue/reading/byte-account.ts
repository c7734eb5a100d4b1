import { isAscii, isUtf8 } from 'node:buffer'
import type { Encoding } from '../../../shared-schemas/supplier-layouts.ts'
import { readPieces } from './file-pieces.ts'

/** What stands in the bytes of a file, before anybody says what they mean. */
export interface ByteAccount {
  readonly bytes: number
  /** The encoding that the file's first bytes name. */
  readonly mark: Encoding | undefined
  /** Whether every byte is one that all encodings of bytes read alike. */
  readonly isAscii: boolean
  readonly isUtf8: boolean
  /** Bytes that are zero, at even and at odd places: in UTF-16, half of each Latin letter. */
  readonly zeros: { readonly even: number; readonly odd: number }
  /** Which bytes above 0x7f there are. */
  readonly highBytes: ReadonlySet<number>
  /** The first lines that are not ASCII. */
  readonly telling: readonly Uint8Array[]
}

const mostTelling = 8
const longestTelling = 400

/** Looks at every byte of the file once. */
export async function accountForBytes(file: string): Promise<ByteAccount> {
  let [bytes, plain, sound, even, odd] = [0, true, true, 0, 0]
  let mark: Encoding | undefined
  const highBytes = new Set<number>()
  const telling: Uint8Array[] = []
  // Cut as UTF-8 is: after a byte 0x0a, at which no character of UTF-8 and of the encodings of one byte is cut.
  for await (const { bytes: piece } of readPieces(file, 'utf-8')) {
    if (bytes === 0) mark = readMark(piece)
    if (!isAscii(piece)) {
      plain = false
      sound &&= isUtf8(piece)
      noteHighBytes(piece, highBytes)
      if (telling.length < mostTelling) telling.push(...listTelling(piece, mostTelling - telling.length))
    }
    for (let at = piece.indexOf(0); at >= 0; at = piece.indexOf(0, at + 1))
      if ((bytes + at) % 2 === 0) even += 1
      else odd += 1
    bytes += piece.length
  }
  return { bytes, mark, isAscii: plain, isUtf8: sound, zeros: { even, odd }, highBytes, telling }
}

function readMark(bytes: Uint8Array): Encoding | undefined {
  const [first, second, third] = bytes
  if (first === 0xef && second === 0xbb && third === 0xbf) return 'utf-8'
  if (first === 0xff && second === 0xfe) return 'utf-16le'
  return first === 0xfe && second === 0xff ? 'utf-16be' : undefined
}

function noteHighBytes(piece: Uint8Array, highBytes: Set<number>): void {
  if (highBytes.size === 128) return
  for (const byte of piece) if (byte > 0x7f) highBytes.add(byte)
}

function listTelling(piece: Buffer, most: number): Uint8Array[] {
  const lines: Uint8Array[] = []
  let from = 0
  while (from < piece.length && lines.length < most) {
    const feed = piece.indexOf(0x0a, from)
    const to = feed < 0 ? piece.length : feed
    const line = piece.subarray(from, Math.min(to, from + longestTelling))
    if (!isAscii(line)) lines.push(Uint8Array.from(to - from > longestTelling ? wholeCharacters(line) : line))
    from = to + 1
  }
  return lines
}

/** A line that was cut off may end amid a character: what comes after its last ASCII byte is left out. */
function wholeCharacters(line: Buffer): Buffer {
  let end = line.length
  while (end > 0 && (line[end - 1] ?? 0) > 0x7f) end -= 1
  return end === 0 ? line : line.subarray(0, end)
}
