import { z } from 'zod'
import { familyId, type PartId, partId, partNumber } from '../../shared-schemas/identifiers.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import { normaliseNumber } from './normalise-number.ts'

const partRow = z.object({
  part_id: partId,
  part_number: partNumber,
  family_id: familyId,
  family: z.string(),
  maker: z.string(),
  kind: z.enum(['genuine', 'pattern']),
  description: z.string(),
})

const partColumns = `part_id, part_number, family_id, family, maker, kind, description
  FROM part JOIN family USING (family_id)`

export type Part = ReturnType<typeof asPart>

/** The part that carries this number: its own, or else another number printed on it, or else its GTIN. */
export function findPartByNumber(database: ReadableDatabase, typed: string): Part | undefined {
  const key = normaliseNumber(typed)
  const found =
    database.row(partRow, `SELECT ${partColumns} WHERE part_key = ?`, key) ??
    database.row(
      partRow,
      `SELECT ${partColumns} WHERE part_id = (SELECT part_id FROM cross_reference WHERE number_key = ?)`,
      key,
    ) ??
    database.row(partRow, `SELECT ${partColumns} WHERE gtin = ?`, key)
  return found && asPart(found)
}

/** The same for many numbers at once, by the number as typed; a number that no part carries is left out. */
export function findPartsByNumbers(
  database: ReadableDatabase,
  typed: Iterable<string>,
): ReadonlyMap<string, Part> {
  const numbers = [...new Set(typed)].map(number => ({ number, key: normaliseNumber(number) }))
  const keys = JSON.stringify([...new Set(numbers.map(({ key }) => key))])
  const byKey = new Map<string, Part>()
  for (const sql of [partsOfGtins, partsOfOtherNumbers, partsOfOwnNumbers])
    for (const row of database.rows(askedPartRow, sql, keys)) byKey.set(row.asked_key, asPart(row))
  return new Map(
    numbers.flatMap(({ number, key }) => {
      const part = byKey.get(key)
      return part === undefined ? [] : [[number, part] as const]
    }),
  )
}

const askedPartRow = partRow.extend({ asked_key: z.string() })

const askedColumns =
  'asked.value AS asked_key, part_id, part_number, family_id, family, maker, kind, description'

const partsOfOwnNumbers = `SELECT ${askedColumns}
  FROM json_each(?) AS asked CROSS JOIN part ON part_key = asked.value JOIN family USING (family_id)`

const partsOfOtherNumbers = `SELECT ${askedColumns}
  FROM json_each(?) AS asked CROSS JOIN cross_reference ON number_key = asked.value
  JOIN part USING (part_id) JOIN family USING (family_id)`

const partsOfGtins = `SELECT ${askedColumns}
  FROM json_each(?) AS asked CROSS JOIN part ON gtin = asked.value JOIN family USING (family_id)`

export function readPart(database: ReadableDatabase, id: PartId): Part {
  const found = database.row(partRow, `SELECT ${partColumns} WHERE part_id = ?`, id)
  if (found === undefined) throw new Error(`a part id comes from this database, but ${id} is not in it`)
  return asPart(found)
}

function asPart(row: z.output<typeof partRow>) {
  return {
    partId: row.part_id,
    partNumber: row.part_number,
    familyId: row.family_id,
    family: row.family,
    maker: row.maker,
    kind: row.kind,
    description: row.description,
  }
}

const nearRow = z.object({ part_number: z.string() })

/** Numbers that begin or end as this one does, for a person to compare; never taken in its place. */
export function listNearestPartNumbers(database: ReadableDatabase, typed: string, most = 5): string[] {
  const key = normaliseNumber(typed)
  if (key.length < 3) return []
  const start = key.slice(0, Math.max(3, key.length - 2))
  const rows = database.rows(
    nearRow,
    'SELECT part_number FROM part WHERE part_key >= ?1 AND part_key < ?2 ORDER BY part_key LIMIT ?3',
    start,
    `${start}\u{10ffff}`,
    most,
  )
  return rows.map(row => row.part_number)
}
