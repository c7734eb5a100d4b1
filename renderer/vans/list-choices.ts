import type { CountLine, Explanation } from '../../shared-schemas/van-counts.ts'

/**
 * What may still explain a line: an explanation that rests on another line falls away once that one was put down to
 * something else.
 */
export function listChoices(line: CountLine, all: readonly CountLine[]): Explanation[] {
  return line.proposed.filter(({ kind, detail }) => {
    const other = all.find(({ partNumber }) => partNumber === detail)?.settled
    return other == null || (other.kind === kind && other.detail === line.partNumber)
  })
}
