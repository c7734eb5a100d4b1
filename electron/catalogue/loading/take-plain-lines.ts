import type { SourceRow } from '../reading/source-rows.ts'
import type { CatalogueFile, CellTaker, PlainLines } from './catalogue-file.ts'
import { readPlainLines } from './read-plain-lines.ts'

interface TakingPlainly {
  readonly file: CatalogueFile
  readonly taker: CellTaker
  /** Takes a row whose bytes say something new, cell by cell. */
  readonly takeSlowly: (header: readonly string[], row: SourceRow) => void
  /** Told now and then how many rows were taken since, and how much of the file has been read, 0 to 1. */
  readonly tell: (rows: number, share: number) => void
}

export interface PlainlyTaken {
  readonly lines: number
  /** The header, where the whole file was taken: then nothing is left to read. */
  readonly wholeWith: readonly string[] | undefined
}

/**
 * Takes the lines of a catalogue file as bytes, for a kind of file that may have millions. Gives how many were taken;
 * from there the general reader goes on, which alone knows about everything that a file may have wrong.
 */
export async function takePlainLines(path: string | undefined, taking: TakingPlainly): Promise<PlainlyTaken> {
  const { file, taker, takeSlowly, tell } = taking
  if (path === undefined || taker.openPlain === undefined) return nothingTaken
  let header: readonly string[] | undefined
  let plain: PlainLines | undefined
  let [lines, slow] = [0, 0]
  for await (const { bytes, share, isEnd } of readPlainLines(path)) {
    const end = plain === undefined ? bytes.indexOf(feed) + 1 : 0
    if (plain === undefined) {
      const named = readSoundHeader(file, bytes.subarray(0, end))
      plain =
        named &&
        taker.openPlain(named, row => {
          slow += 1
          takeSlowly(named, row)
        })
      if (plain === undefined) return nothingTaken
      ;[header, lines] = [named, 1]
    }
    const taken = plain.take(bytes.subarray(end), lines + 1)
    lines += taken.lines
    tell(taken.rows - slow, share)
    slow = 0
    if (!taken.isPlain) break
    if (isEnd) return { lines, wholeWith: header }
  }
  return { lines, wholeWith: undefined }
}

const nothingTaken: PlainlyTaken = { lines: 0, wholeWith: undefined }

const feed = 0x0a

/** The header, where it is just as it should be. */
function readSoundHeader(
  { columns, neededColumns }: CatalogueFile,
  line: Uint8Array,
): readonly string[] | undefined {
  const header = Buffer.from(line).toString('utf8').trim().split(',')
  const isSound =
    header.every(column => columns.includes(column)) &&
    new Set(header).size === header.length &&
    neededColumns.every(column => header.includes(column))
  return isSound ? header : undefined
}
