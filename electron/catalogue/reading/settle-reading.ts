import type { Encoding, Reading, Separator } from '../../../shared-schemas/supplier-layouts.ts'
import { type Decided, Refusal } from '../../requests/refusal.ts'
import type { ExaminedFile, ExaminedText, ExaminedWorkbook } from './examine-file.ts'
import { readCsvRows } from './read-csv-rows.ts'
import type { RowSource } from './source-rows.ts'

/** How a file will be read, with nothing left open. */
export type SettledReading =
  | { readonly kind: 'csv'; readonly encoding: Encoding; readonly separator: Separator }
  | { readonly kind: 'xlsx'; readonly sheet: string }

export type AskedReading = Pick<Reading, 'encoding' | 'separator' | 'sheet'>

/** What is likeliest, for showing and never for loading. */
export function supposeReading(examined: ExaminedFile, asked: AskedReading): SettledReading {
  if (examined.kind === 'xlsx') {
    const { sheets } = examined
    const first = sheets.find(({ hidden }) => !hidden) ?? sheets[0]
    const named = sheets.find(({ name }) => name === asked.sheet)
    return { kind: 'xlsx', sheet: (named ?? first)?.name ?? '' }
  }
  const { encoding, separator, separatorLine } = examined
  return {
    kind: 'csv',
    encoding: asked.encoding === null || examined.marked ? encoding.encoding : asked.encoding,
    separator: asked.separator === null || separatorLine ? separator.separator : asked.separator,
  }
}

/**
 * How the file is read for loading: as was asked, and what was left open only where it is certain. What was asked is
 * doubted where the bytes speak against it, unless a person who has seen that insists; a mark in the file decides always.
 */
export function settleReading(
  examined: ExaminedFile,
  asked: AskedReading,
  { insisted }: { readonly insisted: Encoding | undefined },
): Decided<SettledReading> {
  if (examined.kind === 'xlsx') return settleSheet(examined, asked.sheet)
  const { file, encoding, separator } = examined
  if (insisted === undefined && !examined.marked && isDoubtful(examined, asked.encoding))
    return {
      ok: false,
      problem: { code: 'encoding-not-certain', file, asked: asked.encoding, found: encoding },
    }
  if (asked.separator === null && separator.certainty !== 'certain')
    return { ok: false, problem: { code: 'separator-not-certain', file, found: separator } }
  return { ok: true, value: supposeReading(examined, { ...asked, encoding: insisted ?? asked.encoding }) }
}

function isDoubtful(
  { encoding: { encoding, certainty, options } }: ExaminedText,
  asked: Encoding | null,
): boolean {
  if (asked === null) return certainty !== 'certain'
  if (asked === encoding) return false
  return certainty === 'likely' || !options.some(option => option.encoding === asked)
}

function settleSheet({ file, sheets }: ExaminedWorkbook, asked: string | null): Decided<SettledReading> {
  const visible = sheets.filter(({ hidden }) => !hidden)
  const only = visible.length === 1 ? visible[0]?.name : undefined
  const sheet = asked === null ? only : sheets.find(({ name }) => name === asked)?.name
  if (sheet === undefined)
    return { ok: false, problem: { code: 'sheet-not-settled', file, asked, sheets: [...sheets] } }
  return { ok: true, value: { kind: 'xlsx', sheet } }
}

/** The rows of the file, read as was settled. */
export async function* openRows(examined: ExaminedFile, settled: SettledReading): RowSource {
  if (settled.kind === 'csv') yield* readCsvRows(examined.file, settled)
  else if (examined.kind === 'xlsx') yield* examined.workbook.readRows(settled.sheet)
  else throw new Refusal({ code: 'file-unreadable', file: examined.file, why: 'it is no workbook' })
}
