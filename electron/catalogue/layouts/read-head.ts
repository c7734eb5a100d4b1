import type { Reading } from '../../../shared-schemas/supplier-layouts.ts'
import { type ExaminedFile, examineFile } from '../reading/examine-file.ts'
import { readFirstRows } from '../reading/first-rows.ts'
import { type SettledReading, supposeReading } from '../reading/settle-reading.ts'
import type { SourceRow } from '../reading/source-rows.ts'
import { nameHeadings, placeHeadings } from './name-headings.ts'

/** The beginning of a file as it would probably be read, for a person to judge. */
export interface FileHead {
  readonly examined: ExaminedFile
  readonly settled: SettledReading
  readonly headings: readonly string[]
  /** Rows before the one with the headings. */
  readonly above: readonly SourceRow[]
  readonly rows: readonly SourceRow[]
}

export async function readHead(
  path: string,
  { reading, rows: most }: { readonly reading: Reading; readonly rows: number },
): Promise<FileHead> {
  const examined = await examineFile(path, reading)
  const settled = supposeReading(examined, reading)
  const { headerRow } = reading
  const first = await readFirstRows(examined, settled, (headerRow ?? 0) + most)
  if (headerRow === null)
    return { examined, settled, headings: placeHeadings(widest(first)), above: [], rows: first }
  const headings = nameHeadings(first[headerRow - 1]?.cells ?? [])
  return { examined, settled, headings, above: first.slice(0, headerRow - 1), rows: first.slice(headerRow) }
}

function widest(rows: readonly SourceRow[]): number {
  return rows.reduce((width, { cells }) => Math.max(width, cells.length), 0)
}

/** The reading with everything filled that was left open. */
export function fillReading(reading: Reading, settled: SettledReading): Reading {
  return settled.kind === 'csv'
    ? { ...reading, encoding: settled.encoding, separator: settled.separator }
    : { ...reading, sheet: settled.sheet }
}
