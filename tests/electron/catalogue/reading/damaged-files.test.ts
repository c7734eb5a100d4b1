import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { applyLayout } from '../../../../electron/catalogue/layouts/apply-layout.ts'
import { examineFile } from '../../../../electron/catalogue/reading/examine-file.ts'
import { openRows, settleReading } from '../../../../electron/catalogue/reading/settle-reading.ts'
import type { SourceRow } from '../../../../electron/catalogue/reading/source-rows.ts'
import { orRefuse, Refusal } from '../../../../electron/requests/refusal.ts'
import { type Encoding, layout, type Separator } from '../../../../shared-schemas/supplier-layouts.ts'
import { openTestCatalogue } from '../../../builders/open-test-catalogue.ts'
import { smallCatalogue } from '../../../builders/small-catalogue.ts'
import { layoutOf } from '../layouts/supplier-shop.ts'
import { damageBytes, encodeText, pick, seededRandom } from './damage-bytes.ts'

const files = 20_000
/** Reading is tried with every file, loading with one of so many: it takes longer, and adds rules of its own only. */
const loadedOf = 25
const seed = Number(process.env.TALLYPLATE_SEED ?? 20_261_125)

const folder = mkdtempSync(path.join(tmpdir(), 'tallyplate-damaged-'))
const file = path.join(folder, 'damaged.csv')
const catalogue = openTestCatalogue()
beforeAll(() => catalogue.load(smallCatalogue))
afterAll(() => rmSync(folder, { recursive: true }))

const list = layout.parse(
  layoutOf({
    headings: ['Artikel', 'Bezeichnung', 'Preis', 'Menge'],
    columns: [
      { column: 'supplier', constant: 'DEALER' },
      { column: 'part_number', heading: 'Artikel' },
      { column: 'price', heading: 'Preis', decimalSign: ',' },
      { column: 'from_quantity', heading: 'Menge' },
    ],
  }),
)

const rowsOfList = [
  ['Artikel', 'Bezeichnung', 'Preis', 'Menge'],
  ['0048-0121', 'Pumpe für Türe', '18,40', '1'],
  ['0048-0122', '"Pumpe; groß, 2 Zoll ""neu"""', '9,90', '5'],
  ['0048-0123', '"zwei\nZeilen"', '3,50', ''],
  ['PX 7', '', '"1,5"', '10'],
  ['1E5', 'Türschloß', '7', '2'],
  ...Array.from({ length: 12 }, (_, at) => ['PX 7', `Dichtung Nr. ${at}`, '4,20', String(20 + at)]),
]

interface Case {
  readonly bytes: Buffer
  readonly encoding: Encoding | null
  readonly separator: Separator | null
}

function makeCase(random: (below: number) => number): Case {
  const encoding = pick(['utf-8', 'utf-16le', 'utf-16be', 'windows-1252', 'windows-1252'] as const, random)
  const separator = pick([';', '\t', '|'] as const, random)
  const end = pick(['\n', '\r\n', '\r'], random)
  const text = rowsOfList.map(cells => cells.join(separator).replaceAll('\n', end) + end).join('')
  const mark = random(3) === 0 && encoding !== 'windows-1252' ? '\u{feff}' : ''
  const bytes = damageBytes(encodeText(mark + text, encoding), random)
  // A person named both, or neither: then each is found for certain, or the file is refused.
  const isNamed = random(8) > 0
  return { bytes, encoding: isNamed ? encoding : null, separator: isNamed ? separator : null }
}

/** The text of the bytes, made without any of the code under test. */
function decodeWhole(bytes: Buffer, encoding: Encoding): string {
  const text = new TextDecoder(encoding, { fatal: true, ignoreBOM: true }).decode(bytes)
  return text.replace(/^\u{feff}/u, '')
}

const withoutSigns = (text: string, separator: string) =>
  text.replaceAll(/["\s]/g, '').replaceAll(separator, '')

/**
 * Every letter of the text is in some row, in its order; every line that holds something is one of a row's, and no line
 * is two rows'. Only signs that part cells and rows are gone, and blanks, which are nobody's meaning.
 */
function checkNothingLost(text: string, separator: string, rows: readonly SourceRow[]): void {
  const body = text.replace(/^(?:"sep=."|sep=.)[ \t]*(?:\r\n|\r|\n|$)/i, '')
  const held = rows.map(({ cells }) => cells.join('')).join('')
  if (withoutSigns(held, separator) !== withoutSigns(body, separator))
    expect(withoutSigns(held, separator)).toBe(withoutSigns(body, separator))
  const lines = text.split(/\r\n|\r|\n/)
  let next = body === text ? 1 : 2
  for (const { line, cells } of rows) {
    for (; next < line; next += 1) checkHoldsNothing(lines[next - 1])
    if (next !== line) expect(next).toBe(line)
    next = line + 1 + cells.reduce((breaks, cell) => breaks + cell.split('\n').length - 1, 0)
  }
  for (; next <= lines.length; next += 1) checkHoldsNothing(lines[next - 1])
}

/** A line that is passed over is empty, or has one empty cell in quotes. */
function checkHoldsNothing(line: string | undefined): void {
  if (line !== '' && line !== '""') expect(line).toBe('')
}

async function* again(rows: readonly SourceRow[]) {
  yield { rows, share: 1 }
}

interface Met {
  refused: number
  read: number
  mapped: number
  faulty: number
}

/** Reads the file as it would be loaded, and gives how many statements it makes. */
async function meet({ bytes, encoding, separator }: Case, met: Met): Promise<number> {
  const named = { ...list, reading: { ...list.reading, encoding, separator } }
  const examined = await examineFile(file, { encoding })
  const settled = orRefuse(settleReading(examined, named.reading, { insisted: undefined }))
  if (settled.kind !== 'csv') throw new Error('no damage makes a workbook of a list')
  const rows: SourceRow[] = []
  for await (const read of openRows(examined, settled)) rows.push(...read.rows)
  const text = decodeWhole(bytes, settled.encoding)
  const line = /^(?:"sep=(.)"|sep=(.))/i.exec(text)
  checkNothingLost(text, line?.[1] ?? line?.[2] ?? settled.separator, rows)
  met.read += 1
  const use = { layout: named, file, separator: settled.separator, told: () => {} }
  const mapped: SourceRow[] = []
  for await (const read of applyLayout(again(rows), use)) mapped.push(...read.rows)
  // The header, and each further row as a statement or as what is wrong with it.
  expect(mapped).toHaveLength(rows.length)
  met.mapped += mapped.length - 1
  met.faulty += mapped.filter(({ fault }) => fault !== undefined).length
  return mapped.length - 1
}

/** Loads the file in earnest: all of it or nothing, with every statement counted. `statements` is undefined where it is refused. */
async function loadInEarnest({ encoding, separator }: Case, statements: number | undefined): Promise<void> {
  const before = countStored()
  const trialLayout = { ...list, reading: { ...list.reading, encoding, separator } }
  try {
    const { files: loaded, rejected } = await catalogue.loadPath(file, { trialLayout })
    const [{ added, changed, unchanged, rejected: refused } = none] = loaded
    expect(added + changed + unchanged + refused).toBe(statements)
    expect(rejected).toHaveLength(refused)
    expect(countStored().offers).toBe(before.offers + added)
  } catch (thrown) {
    if (!(thrown instanceof Refusal) || statements !== undefined) throw thrown
    expect(countStored()).toEqual(before)
  }
}

const none = { added: 0, changed: 0, unchanged: 0, rejected: 0 }

function countStored() {
  const [found] = catalogue.database.tuples<[number, number]>(
    'SELECT (SELECT count(*) FROM offer), (SELECT count(*) FROM load_run)',
  )
  return { offers: found?.[0] ?? 0, runs: found?.[1] ?? 0 }
}

test(`of ${files.toLocaleString('en')} damaged files each is refused, or has every row taken or named`, async () => {
  const random = seededRandom(seed)
  const met: Met = { refused: 0, read: 0, mapped: 0, faulty: 0 }
  for (let nth = 0; nth < files; nth += 1) {
    const made = makeCase(random)
    writeFileSync(file, made.bytes)
    try {
      const statements = await unlessRefused(() => meet(made, met))
      if (statements === undefined) met.refused += 1
      if (nth % loadedOf === 0) await loadInEarnest(made, statements)
    } catch (thrown) {
      throw new Error(`file ${nth} of seed ${seed}: ${made.bytes.toString('base64')}`, { cause: thrown })
    }
  }
  // The damages are neither so slight nor so heavy that one outcome hides the others.
  expect(met.refused).toBeGreaterThan(files / 10)
  expect(met.refused).toBeLessThan(files * 0.7)
  expect(met.mapped).toBeGreaterThan(files)
  expect(met.faulty).toBeGreaterThan(files / 20)
}, 600_000)

async function unlessRefused<Value>(work: () => Promise<Value>): Promise<Value | undefined> {
  try {
    return await work()
  } catch (thrown) {
    if (thrown instanceof Refusal) return undefined
    throw thrown
  }
}
