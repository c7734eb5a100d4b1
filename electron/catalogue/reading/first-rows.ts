import type { ExaminedFile } from './examine-file.ts'
import { openRows, type SettledReading } from './settle-reading.ts'
import type { SourceRow } from './source-rows.ts'

/** The first rows of a file, as far as `most`. */
export async function readFirstRows(
  examined: ExaminedFile,
  settled: SettledReading,
  most: number,
): Promise<SourceRow[]> {
  const first: SourceRow[] = []
  for await (const { rows } of openRows(examined, settled)) {
    first.push(...rows.slice(0, most - first.length))
    if (first.length >= most) break
  }
  return first
}
