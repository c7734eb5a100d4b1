import { type Encoding, type Separator, separators } from '../../../shared-schemas/supplier-layouts.ts'
import { CsvParser } from './csv-parser.ts'
import { readText } from './read-text.ts'
import { unreadable } from './refuse-unreadable.ts'
import type { SourceRows } from './source-rows.ts'

export interface CsvReading {
  readonly encoding: Encoding
  readonly separator: Separator
}

const catalogueReading: CsvReading = { encoding: 'utf-8', separator: ',' }

/**
 * The rows of a CSV file as RFC 4180 has them, with whatever separator. Lines may end with CR LF, LF or CR; inside a
 * cell each comes out as LF. Empty lines are passed over. A first line `sep=…` names the separator and is no row.
 */
export async function* readCsvRows(file: string, reading = catalogueReading): AsyncGenerator<SourceRows> {
  let parser: CsvParser | undefined
  for await (const { text, share } of readText(file, reading.encoding)) {
    const named = parser === undefined ? readSeparatorLine(text) : undefined
    parser ??= new CsvParser(file, {
      separator: named === undefined ? reading.separator : knownSeparator(file, named.separator),
      firstLine: named === undefined ? 1 : 2,
    })
    yield { rows: parser.parse(named === undefined ? text : named.rest), share }
  }
  yield { rows: parser?.end() ?? [], share: 1 }
}

/** The separator that the first line names, as some spreadsheets write it, and what comes after that line. */
export function readSeparatorLine(
  text: string,
): { readonly separator: string; readonly rest: string } | undefined {
  const found = /^(?:"sep=(.)"|sep=(.))[ \t]*(?:\n|$)/i.exec(text)
  if (found === null) return undefined
  return { separator: found[1] ?? found[2] ?? '', rest: text.slice(found[0].length) }
}

export function knownSeparator(file: string, named: string): Separator {
  const separator = separators.find(known => known === named)
  if (separator === undefined)
    throw unreadable(file, `its first line names “${named}” as separator; save it with , ; | or a tab`)
  return separator
}
