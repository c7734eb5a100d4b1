import type { Encoding } from '../../../shared-schemas/supplier-layouts.ts'
import { decodeBytes, wordEncoding } from './decode-bytes.ts'
import { encodeUnit, readPieces, unitOf } from './file-pieces.ts'
import { unreadable } from './refuse-unreadable.ts'

export interface TextPiece {
  /** Whole lines, each ended by LF but perhaps the last. */
  readonly text: string
  readonly share: number
}

/** The text of a file, without its byte order mark; refused with the line that is not of this encoding. */
export async function* readText(file: string, encoding: Encoding): AsyncGenerator<TextPiece> {
  let line = 1
  for await (const { bytes, share } of readPieces(file, encoding)) {
    const decoded = decodeBytes(bytes, encoding)
    if (decoded === undefined) throw unreadable(file, wordWrongLine(bytes, { encoding, firstLine: line }))
    const text = decoded.includes('\r') ? decoded.replace(/\r\n?/g, '\n') : decoded
    yield { text: line === 1 && text.startsWith('\u{feff}') ? text.slice(1) : text, share }
    line += countBreaks(text)
  }
}

export function countBreaks(text: string): number {
  let breaks = 0
  for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) breaks += 1
  return breaks
}

interface Where {
  readonly encoding: Encoding
  readonly firstLine: number
}

function wordWrongLine(bytes: Buffer, { encoding, firstLine }: Where): string {
  const line =
    firstLine + listLines(bytes, encoding).findIndex(each => decodeBytes(each, encoding) === undefined)
  const hint =
    encoding === 'utf-8'
      ? 'save the file as “CSV UTF-8”, or load it with a layout'
      : 'choose another encoding'
  return `line ${line} is not ${wordEncoding(encoding)}; ${hint}`
}

/** The bytes of each line. What ends a line is the same in every encoding but for its width. */
function listLines(bytes: Buffer, encoding: Encoding): Buffer[] {
  const unit = unitOf(encoding)
  const [feed, carriage] = [encodeUnit('\n', encoding), encodeUnit('\r', encoding)]
  const lines: Buffer[] = []
  let from = 0
  for (let at = 0; at + unit <= bytes.length; at += unit) {
    const here = bytes.subarray(at, at + unit)
    const isPair = here.equals(carriage) && bytes.subarray(at + unit, at + 2 * unit).equals(feed)
    if (isPair || !(here.equals(feed) || here.equals(carriage))) continue
    lines.push(bytes.subarray(from, at + unit))
    from = at + unit
  }
  return [...lines, bytes.subarray(from)]
}
