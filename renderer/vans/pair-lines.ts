import type { CountLine, Explanation } from '../../shared-schemas/van-counts.ts'

/**
 * The lines that one explanation settles: its own, and where it names another part that is off by as much the other way
 * and says the same of this one, that part's line too.
 */
export function pairLines(
  line: CountLine,
  chosen: Explanation,
  all: readonly CountLine[],
): readonly { readonly part: string; readonly explanation: Explanation }[] {
  const own = { part: line.partNumber, explanation: chosen }
  const other = all.find(({ partNumber, settled }) => partNumber === chosen.detail && settled === null)
  const answer = other?.proposed.find(
    ({ kind, detail }) => kind === chosen.kind && detail === line.partNumber,
  )
  return other === undefined || answer === undefined
    ? [own]
    : [own, { part: other.partNumber, explanation: answer }]
}
