import { isUtf8 } from 'node:buffer'
import { open } from 'node:fs/promises'
import { refusing } from '../reading/refuse-unreadable.ts'

export interface PlainPiece {
  /** Whole lines in UTF-8, each with its LF. */
  readonly bytes: Uint8Array
  /** How much of the file has been read, 0 to 1. */
  readonly share: number
  /** Whether this is all of the file; it comes last and may be empty. */
  readonly isEnd: boolean
}

/** The lines of a file as bytes, without the mark at its beginning; ends early at bytes that are not UTF-8 or at an endless line. */
export async function* readPlainLines(file: string): AsyncGenerator<PlainPiece> {
  const handle = await refusing(file, () => open(file, 'r'))
  try {
    const { size } = await refusing(file, () => handle.stat())
    const buffer = Buffer.allocUnsafe(pieceBytes)
    let [kept, bytesRead, isFirst] = [0, 0, true]
    for (;;) {
      const read = await refusing(file, () => handle.read(buffer, kept, pieceBytes - kept - 1))
      bytesRead += read.bytesRead
      const isLast = read.bytesRead === 0
      const filled = isLast ? endLastLine(buffer, kept) : kept + read.bytesRead
      const end = buffer.subarray(0, filled).lastIndexOf(feed) + 1
      if (end === 0 && filled >= pieceBytes - 1) return
      const bytes = buffer.subarray(isFirst && startsWithMark(buffer, filled) ? mark.length : 0, end)
      if (!isUtf8(bytes)) return
      if (bytes.length > 0) isFirst = false
      yield { bytes, share: Math.min(1, bytesRead / Math.max(1, size)), isEnd: isLast }
      if (isLast) return
      buffer.copyWithin(0, end, filled)
      kept = filled - end
    }
  } finally {
    await handle.close()
  }
}

const pieceBytes = 512 * 1024
const feed = 0x0a
const mark = [0xef, 0xbb, 0xbf]

/** The last line of a file may come without an end. */
function endLastLine(buffer: Buffer, filled: number): number {
  if (filled === 0) return 0
  buffer[filled] = feed
  return filled + 1
}

function startsWithMark(buffer: Buffer, filled: number): boolean {
  return filled >= mark.length && mark.every((byte, at) => buffer[at] === byte)
}
