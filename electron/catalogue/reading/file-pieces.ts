import { type FileHandle, open } from 'node:fs/promises'
import type { Encoding } from '../../../shared-schemas/supplier-layouts.ts'
import { refusing, unreadable } from './refuse-unreadable.ts'

export interface FilePiece {
  readonly bytes: Buffer
  /** How much of the file has been read, 0 to 1. */
  readonly share: number
}

/** A cell as long as this is a quote that was never closed. */
export const longestRow = 1024 * 1024

const pieceBytes = 96 * 1024

/**
 * Whole lines of a file as bytes. They are cut only after a line's end, which in none of the encodings is part of
 * another character: so no character is ever split between two pieces.
 */
export async function* readPieces(file: string, encoding: Encoding): AsyncGenerator<FilePiece> {
  const handle = await refusing(file, () => open(file, 'r'))
  try {
    const { size } = await refusing(file, () => handle.stat())
    let [rest, bytesRead] = [Buffer.alloc(0) as Buffer, 0]
    for (;;) {
      const bytes = await refusing(file, () => readPiece(handle))
      bytesRead += bytes.length
      const all = Buffer.concat([rest, bytes])
      const end = bytes.length === 0 ? all.length : endOfLines(all, encoding)
      rest = all.subarray(end)
      if (rest.length > 4 * longestRow)
        throw unreadable(file, 'it has a line of more than four million bytes, so it is no table')
      if (end > 0) yield { bytes: all.subarray(0, end), share: Math.min(1, bytesRead / Math.max(1, size)) }
      if (bytes.length === 0) return
    }
  } finally {
    await handle.close()
  }
}

async function readPiece(handle: FileHandle): Promise<Buffer> {
  const { buffer, bytesRead } = await handle.read(Buffer.allocUnsafe(pieceBytes), 0, pieceBytes)
  return buffer.subarray(0, bytesRead)
}

/** How many bytes one unit of a line's end takes. */
export function unitOf(encoding: Encoding): 1 | 2 {
  return encoding === 'utf-16le' || encoding === 'utf-16be' ? 2 : 1
}

/** Where the whole lines end. A CR at the very end may be half of CR LF, so it waits. */
function endOfLines(bytes: Buffer, encoding: Encoding): number {
  const afterFeed = afterLast(bytes, '\n', { encoding, upTo: bytes.length })
  if (afterFeed > 0) return afterFeed
  return afterLast(bytes, '\r', { encoding, upTo: bytes.length - unitOf(encoding) })
}

interface Within {
  readonly encoding: Encoding
  readonly upTo: number
}

/** The place after the last such character that ends by `upTo`; 0 where there is none. */
function afterLast(bytes: Buffer, character: '\n' | '\r', { encoding, upTo }: Within): number {
  if (upTo <= 0) return 0
  const unit = unitOf(encoding)
  if (unit === 1) return bytes.lastIndexOf(character.charCodeAt(0), upTo - 1) + 1
  const pattern = encodeUnit(character, encoding)
  let at = bytes.lastIndexOf(pattern, upTo - 2)
  // An odd place is the end of one character and the beginning of the next.
  while (at > 0 && at % 2 === 1) at = bytes.lastIndexOf(pattern, at - 1)
  return at < 0 || at % 2 === 1 ? 0 : at + 2
}

/** One character below U+0100 in the bytes of the encoding. */
export function encodeUnit(character: string, encoding: Encoding): Buffer {
  const code = character.charCodeAt(0)
  if (encoding === 'utf-16le') return Buffer.from([code, 0])
  return encoding === 'utf-16be' ? Buffer.from([0, code]) : Buffer.from([code])
}
