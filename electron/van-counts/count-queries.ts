import { z } from 'zod'
import { type PartId, partId } from '../../shared-schemas/identifiers.ts'
import type { Bindable, ReadableDatabase, WritableDatabase } from '../database/handles.ts'
import type { MovementStamp } from '../stock-ledger/append-movements.ts'

const countRow = z.object({
  count_id: z.string(),
  location_id: z.int(),
  location: z.string(),
  device: z.string(),
  begun_at: z.string(),
  initials: z.string(),
  posted_at: z.string().nullable(),
})

export interface FoundCount {
  readonly countId: string
  readonly locationId: number
  readonly location: string
  /** The machine on which it was begun, which alone goes on with it. */
  readonly device: string
  readonly begunAt: string
  readonly initials: string
  readonly postedAt: string | null
}

const counts = `SELECT count_id, location_id, location, stock_count.device AS device, begun_at, stock_count.initials, posted_at
  FROM stock_count CROSS JOIN location USING (location_id) LEFT JOIN count_posting USING (count_id)`

export function findCount(database: ReadableDatabase, countId: string): FoundCount | undefined {
  const row = database.row(countRow, `${counts} WHERE count_id = ?`, countId)
  return row && asCount(row)
}

/** The count of a location that was begun on this machine and not posted yet. */
export function findOpenCount(
  database: ReadableDatabase,
  locationId: number,
  device: string,
): FoundCount | undefined {
  const row = database.row(
    countRow,
    `${counts} WHERE location_id = ? AND stock_count.device = ? AND posted_at IS NULL ORDER BY count_id DESC LIMIT 1`,
    ...[locationId, device],
  )
  return row && asCount(row)
}

/** Counts of one location or of all, the latest first. */
export function listFoundCounts(database: ReadableDatabase, locationId: number | null): FoundCount[] {
  const where = locationId === null ? '' : 'WHERE location_id = ?'
  const bound = locationId === null ? [] : [locationId]
  return database.rows(countRow, `${counts} ${where} ORDER BY count_id DESC`, ...bound).map(asCount)
}

function asCount(row: z.output<typeof countRow>): FoundCount {
  return {
    countId: row.count_id,
    locationId: row.location_id,
    location: row.location,
    device: row.device,
    begunAt: row.begun_at,
    initials: row.initials,
    postedAt: row.posted_at,
  }
}

/** When the location was last counted and the count posted; null for never. */
export function readLastPosted(database: ReadableDatabase, locationId: number): string | null {
  return (
    database.row(
      z.object({ posted_at: z.string().nullable() }),
      'SELECT max(posted_at) AS posted_at FROM count_posting JOIN stock_count USING (count_id) WHERE location_id = ?',
      locationId,
    )?.posted_at ?? null
  )
}

export function appendCount(
  database: WritableDatabase,
  { newId, now, device }: MovementStamp,
  { locationId, initials }: { readonly locationId: number; readonly initials: string },
): string {
  const countId = newId()
  database.run(
    'INSERT INTO stock_count (count_id, location_id, begun_at, device, initials) VALUES (?, ?, ?, ?, ?)',
    ...[countId, locationId, now().toISOString(), device, initials],
  )
  return countId
}

export interface Reading {
  readonly partId: number
  readonly counted: number
  /** What the book had at the moment of the reading. */
  readonly book: number
  readonly initials: string
  /** It begins a round of counting; one that does not adds to the one before. */
  readonly begins: boolean
}

/** Gives the reading's id. */
export function appendReading(
  database: WritableDatabase,
  { newId, now, device }: MovementStamp,
  countId: string,
  { partId, counted, book, initials, begins }: Reading,
): string {
  const readingId = newId()
  database.run(
    `INSERT INTO count_reading (reading_id, count_id, part_id, counted, book, recorded_at, device, initials, begins)
     VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)`,
    ...[readingId, countId, partId, counted, book, now().toISOString(), device, initials, begins ? 1 : 0],
  )
  return readingId
}

export function appendWithdrawal(
  database: WritableDatabase,
  { now, device }: MovementStamp,
  { readingId, initials }: { readonly readingId: string; readonly initials: string },
): void {
  database.run(
    'INSERT INTO count_reading_withdrawn (reading_id, recorded_at, device, initials) VALUES (?, ?, ?, ?)',
    ...[readingId, now().toISOString(), device, initials],
  )
}

const readingRow = z.object({
  part_id: partId,
  counted: z.int(),
  book: z.int(),
  recorded_at: z.string(),
  readings: z.int(),
  last: z.string(),
})

export interface LastReading {
  readonly readingId: string
  readonly partId: PartId
  readonly counted: number
  readonly book: number
  readonly readAt: string
  /** In how many rounds the part was counted; pieces scanned one by one are one. */
  readonly readings: number
}

/** The last reading of each part of a count. SQLite takes the other columns from the row of the maximum. */
export function listLastReadings(
  database: ReadableDatabase,
  countId: string,
  partId: number | null = null,
): LastReading[] {
  const bound: Bindable[] = partId === null ? [countId] : [countId, partId]
  return database
    .rows(
      readingRow,
      `SELECT part_id, counted, book, recorded_at, sum(begins) AS readings, max(reading_id) AS last FROM count_reading
       WHERE count_id = ?${partId === null ? '' : ' AND part_id = ?'}
         AND NOT EXISTS (SELECT 1 FROM count_reading_withdrawn AS back WHERE back.reading_id = count_reading.reading_id)
       GROUP BY part_id ORDER BY part_id`,
      ...bound,
    )
    .map(row => ({
      readingId: row.last,
      partId: row.part_id,
      counted: row.counted,
      book: row.book,
      readAt: row.recorded_at,
      readings: row.readings,
    }))
}

const partRow = z.object({
  part_id: partId,
  part_number: z.string(),
  family_id: z.int(),
  family: z.string(),
  description: z.string(),
  bin: z.string().nullable(),
})

export interface CountedPart {
  readonly partId: PartId
  readonly partNumber: string
  readonly familyId: number
  readonly family: string
  readonly description: string
  readonly bin: string | null
}

/** What is printed beside the number of each of these parts on the sheet of a location, in the order of its bins. */
export function listCountedParts(
  database: ReadableDatabase,
  locationId: number,
  partIds: readonly number[],
): CountedPart[] {
  return database
    .rows(
      partRow,
      `SELECT part_id, part_number, family_id, family.name AS family, description,
         nullif(ifnull((SELECT bin FROM bin WHERE bin.location_id = ?2 AND bin.part_id = part.part_id),
           (SELECT bin FROM opening_stock AS opening
            WHERE opening.location_id = ?2 AND opening.part_id = part.part_id)), '') AS bin
       FROM json_each(?1) AS asked CROSS JOIN part ON part_id = asked.value CROSS JOIN family USING (family_id)
       ORDER BY bin IS NULL, bin, part_number`,
      JSON.stringify(partIds),
      locationId,
    )
    .map(row => ({
      partId: row.part_id,
      partNumber: row.part_number,
      familyId: row.family_id,
      family: row.family,
      description: row.description,
      bin: row.bin,
    }))
}
