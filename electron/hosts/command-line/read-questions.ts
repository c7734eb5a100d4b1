import { readFileSync } from 'node:fs'
import papaparse from 'papaparse'
import { Refusal } from '../../requests/refusal.ts'
import { wordFileError } from '../../requests/word-file-error.ts'

/** The texts of a file, one a line. What stands after the last line's end is no line. */
export function readTexts(file: string): string[] {
  const lines = readText(file).split(/\r\n|\n|\r/)
  if (lines.at(-1) === '') lines.pop()
  return lines
}

/** A row of a questions file: its cells that hold something, and the line it starts on. */
export interface QuestionRow {
  readonly line: number
  readonly cells: Readonly<Record<string, string>>
}

/** The rows of a CSV of questions, in order. Refuses a header with other columns than the ones known. */
export function readQuestionRows(
  file: string,
  columns: { readonly known: readonly string[]; readonly needed: readonly string[] },
): QuestionRow[] {
  const { data } = papaparse.parse<string[]>(readText(file), { delimiter: ',', skipEmptyLines: 'greedy' })
  const [header = [], ...rows] = data
  const names = header.map(name => name.trim())
  refuseHeader(file, names, columns)
  return rows.map((row, at) => ({
    line: at + 2,
    cells: Object.fromEntries(
      names.flatMap((name, column) => {
        const cell = (row[column] ?? '').trim()
        return cell === '' ? [] : [[name, cell] as const]
      }),
    ),
  }))
}

function refuseHeader(
  file: string,
  names: readonly string[],
  { known, needed }: { readonly known: readonly string[]; readonly needed: readonly string[] },
): void {
  const unknown = names.filter(name => !known.includes(name))
  const missing = needed.filter(name => !names.includes(name))
  const repeated = names.filter((name, at) => names.indexOf(name) !== at)
  if (unknown.length + missing.length + repeated.length > 0)
    throw new Refusal({ code: 'wrong-header', file, unknown, missing, repeated })
}

/** The whole text of a file, which must be UTF-8. */
export function readText(file: string): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(readFileSync(file))
  } catch (thrown) {
    const why = thrown instanceof TypeError ? 'it is not UTF-8 text' : wordFileError(thrown)
    throw new Refusal({ code: 'file-unreadable', file, why })
  }
}
