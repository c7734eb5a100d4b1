import type { ReadableDatabase } from '../../database/handles.ts'
import { kindOfColumn } from '../layouts/column-kinds.ts'
import { guessDate } from '../layouts/convert-date.ts'
import { convertNumber } from '../layouts/convert-number.ts'
import { FoldedNumbers } from './folded-numbers.ts'
import type { KnownThings } from './known-things.ts'
import { findOnlyNearest } from './only-nearest.ts'

export interface FaultyCell {
  /** The catalogue file and its column, whatever the supplier's file calls them. */
  readonly file: string
  readonly column: string
  readonly value: string
  /** With which a figure in that column is written. */
  readonly decimalSign: '.' | ','
  /** The other cells of the row, by our columns. */
  readonly cellOf: (column: string) => string
}

const partColumns: readonly string[] = ['part_number', 'old_part', 'new_part', 'kit', 'with_part']

/** Where so many rows are wrong, one by one is not how they are mended. */
const mostFound = 5_000

/**
 * Finds what a cell was probably meant to say, for a person to accept: only where one answer is possible. A mend is
 * written so that loading the row again takes it.
 */
export class MendFinder {
  readonly #known: KnownThings
  readonly #parts: FoldedNumbers
  readonly #models = new Map<number, FoldedNumbers>()
  readonly #database: ReadableDatabase
  #found = 0

  constructor(known: KnownThings, database: ReadableDatabase) {
    this.#known = known
    this.#database = database
    this.#parts = new FoldedNumbers(known.parts, key => readPartNumber(database, key))
  }

  find(cell: FaultyCell): string | null {
    if (cell.column === '' || cell.value === '' || this.#found >= mostFound) return null
    this.#found += 1
    const mend = this.#findByColumn(cell) ?? findTidied(cell.value)
    return mend === undefined || mend === cell.value ? null : mend
  }

  #findByColumn({ file, column, value, decimalSign, cellOf }: FaultyCell): string | undefined {
    const kind = kindOfColumn(file, column)
    if (kind.holds === 'date') return findDate(value)
    if (kind.holds === 'number') return findNumber(value)?.replace('.', decimalSign)
    if (kind.holds === 'words') return findWord(value, kind.takes)
    if (partColumns.includes(column)) return this.#parts.findOnlyLike(this.#known.keyOf(value))
    if (column === 'brand') return this.#findBrand(value)
    if (column === 'family') return findOnlyNearest(value, [...this.#known.families.keys()])
    return column === 'model_number' ? this.#findModel(cellOf('brand'), value) : undefined
  }

  #findBrand(value: string): string | undefined {
    const near = findOnlyNearest(this.#known.keyOf(value), [...this.#known.brands.keys()])
    if (near === undefined) return undefined
    const [found] = [...this.#database.tuples<[string]>('SELECT name FROM brand WHERE name_key = ?', near)]
    return found?.[0]
  }

  #findModel(brand: string, value: string): string | undefined {
    const brandId = this.#known.brands.get(this.#known.keyOf(brand))
    if (brandId === undefined) return undefined
    let folded = this.#models.get(brandId)
    if (folded === undefined) {
      folded = new FoldedNumbers(this.#known.modelsOf(brandId), key =>
        readModelNumber(this.#database, { brandId, key }),
      )
      this.#models.set(brandId, folded)
    }
    return folded.findOnlyLike(this.#known.keyOf(value))
  }
}

function readModelNumber(
  database: ReadableDatabase,
  { brandId, key }: { readonly brandId: number; readonly key: string },
): string {
  const sql = 'SELECT model_number FROM model WHERE brand_id = ? AND model_key = ?'
  const [found] = [...database.tuples<[string]>(sql, brandId, key)]
  return found?.[0] ?? key
}

function readPartNumber(database: ReadableDatabase, key: string): string {
  const [found] = [...database.tuples<[string]>('SELECT part_number FROM part WHERE part_key = ?', key)]
  return found?.[0] ?? key
}

/** A year of two figures belongs to the last seventy years: common practice, and only ever proposed. */
const oldestShortYear = 70

function findDate(value: string): string | undefined {
  const short = /^(.*[./-])(\d\d)$/.exec(value.trim())
  const century = Number(short?.[2]) < oldestShortYear ? '20' : '19'
  return guessDate(value) ?? (short === null ? undefined : guessDate(`${short[1]}${century}${short[2]}`))
}

/** A figure with letters that look like figures, with its currency, or with the other decimal sign. */
function findNumber(value: string): string | undefined {
  const bare = value
    .replaceAll(/[Oo]/g, '0')
    .replaceAll(/[Il]/g, '1')
    .replaceAll(/[\s\u00a0\u202f'’€£$]|\b[A-Z]{3}\b/g, '')
  const readings = (['.', ','] as const).map(decimalSign => {
    const plain = convertNumber(bare, { decimalSign, thousands: false })
    return plain.ok ? plain : convertNumber(bare, { decimalSign, thousands: true })
  })
  const possible = new Set(readings.flatMap(reading => (reading.ok ? [reading.text] : [])))
  return possible.size === 1 ? [...possible][0] : undefined
}

function findWord(value: string, takes: readonly string[]): string | undefined {
  const plain = value.trim().toLowerCase()
  return takes.find(word => word === plain) ?? findOnlyNearest(plain, takes)
}

/** The same text without what nobody sees. */
function findTidied(value: string): string | undefined {
  return value.replaceAll(/[\p{Cc}\p{Cf}\s]+/gu, ' ').trim() || undefined
}
