import { open, stat } from 'node:fs/promises'
import {
  type Encoding,
  type EncodingFound,
  type Reading,
  type Separator,
  type SeparatorFound,
  type Sheet,
  separators,
} from '../../../shared-schemas/supplier-layouts.ts'
import { accountForBytes } from './byte-account.ts'
import { findEncoding } from './find-encoding.ts'
import { findSeparator } from './find-separator.ts'
import type { Workbook } from './open-workbook.ts'
import { knownSeparator, readSeparatorLine } from './read-csv-rows.ts'
import { readText } from './read-text.ts'
import { refusing, unreadable } from './refuse-unreadable.ts'
import { reasonColumns } from './rejects-header.ts'

/** What was found in a file, with nothing decided. */
export type ExaminedFile = ExaminedText | ExaminedWorkbook

export interface ExaminedText {
  readonly kind: 'csv'
  readonly file: string
  readonly bytes: number
  readonly encoding: EncodingFound
  /** Whether the first bytes name the encoding: that is stronger than what anybody asks for. */
  readonly marked: boolean
  /** Found in the text as it reads in the encoding that was asked for, or else in the most likely. */
  readonly separator: SeparatorFound
  readonly separatorLine: boolean
}

export interface ExaminedWorkbook {
  readonly kind: 'xlsx'
  readonly file: string
  readonly bytes: number
  readonly workbook: Workbook
  readonly sheets: readonly Sheet[]
}

/** Looks at a file's bytes: what kind of file it is, and all that can be said about how to read it. */
export async function examineFile(
  file: string,
  asked: { readonly encoding: Encoding | null },
): Promise<ExaminedFile> {
  const found = await refusing(file, () => stat(file))
  if (found.isDirectory()) throw unreadable(file, 'it is a folder')
  const kind = kindOf(await readFirst(file))
  if (kind === 'old-workbook')
    throw unreadable(
      file,
      'it is an old workbook (.xls), or one locked with a password: save it as .xlsx without one',
    )
  return kind === 'xlsx' ? await examineWorkbook(file, found.size) : await examineText(file, asked)
}

const firstBytes = 8

async function readFirst(file: string): Promise<Buffer> {
  const handle = await refusing(file, () => open(file, 'r'))
  try {
    const { buffer, bytesRead } = await refusing(file, () =>
      handle.read(Buffer.alloc(firstBytes), 0, firstBytes),
    )
    return buffer.subarray(0, bytesRead)
  } finally {
    await handle.close()
  }
}

/** By its first bytes, since a name may say anything. */
function kindOf(first: Buffer): 'csv' | 'xlsx' | 'old-workbook' {
  if (first.subarray(0, 4).equals(Buffer.from('PK\u0003\u0004', 'latin1'))) return 'xlsx'
  return first.equals(Buffer.from('d0cf11e0a1b11ae1', 'hex')) ? 'old-workbook' : 'csv'
}

/** The reader of workbooks is large, and most files are none: so it is fetched when it is needed. */
async function examineWorkbook(file: string, bytes: number): Promise<ExaminedWorkbook> {
  const { openWorkbook } = await import('./open-workbook.ts')
  const workbook = await openWorkbook(file)
  return { kind: 'xlsx', file, bytes, workbook, sheets: workbook.sheets }
}

async function examineText(file: string, asked: Pick<Reading, 'encoding'>): Promise<ExaminedText> {
  const account = await accountForBytes(file)
  const encoding = findEncoding(account)
  // In what was asked for only where the bytes allow it: whether to refuse that is decided later, with all that is known.
  const canBeAsked = encoding.options.some(option => option.encoding === asked.encoding)
  const { text, isWhole } = await readSample(file, (canBeAsked && asked.encoding) || encoding.encoding)
  const named = readSeparatorLine(text)
  const separator =
    named === undefined
      ? (separatorOfRejects(text) ?? findSeparator(text, { isWhole }))
      : saidToBe(knownSeparator(file, named.separator), 'the first line of the file names it')
  const marked = account.mark !== undefined
  const separatorLine = named !== undefined
  return { kind: 'csv', file, bytes: account.bytes, encoding, marked, separator, separatorLine }
}

async function readSample(file: string, encoding: Encoding) {
  for await (const { text, share } of readText(file, encoding)) return { text, isWhole: share >= 1 }
  return { text: '', isWhole: true }
}

/** A file of rejected rows is known by its last headings, and they by their separator. */
function separatorOfRejects(text: string): SeparatorFound | undefined {
  const [first = ''] = text.split('\n', 1)
  const separator = separators.find(known => first.includes(reasonColumns.join(known)))
  return separator && saidToBe(separator, 'the headings of rejected rows are parted by it')
}

function saidToBe(separator: Separator, why: string): SeparatorFound {
  return { separator, certainty: 'certain', why, options: [{ separator, cells: 0 }] }
}
