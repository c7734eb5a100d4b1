import { z } from 'zod'
import type { ReadableDatabase } from './handles.ts'

export interface Check {
  readonly name: string
  readonly ok: boolean
  readonly detail: string
}

/** Every check of the whole file, each with what it found. */
export function verifyDatabase(database: ReadableDatabase): Check[] {
  return [
    checkPages(database),
    checkReferences(database),
    checkLedger(database),
    checkBalances(database),
    checkOpeningStock(database),
  ]
}

function checkPages(database: ReadableDatabase): Check {
  const found = database.rows(z.object({ integrity_check: z.string() }), 'PRAGMA integrity_check(5)')
  const faults = found.map(row => row.integrity_check).filter(line => line !== 'ok')
  return {
    name: 'pages and indexes',
    ok: faults.length === 0,
    detail: faults.join('; ') || 'every page reads back',
  }
}

function checkReferences(database: ReadableDatabase): Check {
  const row = z.object({ table: z.string(), parent: z.string() })
  const faults = database.rows(row, 'PRAGMA foreign_key_check')
  const named = [
    ...new Set(faults.map(({ table, parent }) => `${table} names a ${parent} that is not there`)),
  ]
  return { name: 'references', ok: faults.length === 0, detail: named.join('; ') || 'every reference is met' }
}

/** Nothing may be below zero at a location unless it was booked as used before it was received. */
function checkLedger(database: ReadableDatabase): Check {
  const row = z.object({ location: z.string(), part_number: z.string(), on_hand: z.int() })
  const below = database.rows(
    row,
    `SELECT location, part_number, sum(delta) AS on_hand
     FROM (SELECT to_location_id AS location_id, part_id, quantity AS delta FROM movement WHERE to_location_id IS NOT NULL
           UNION ALL
           SELECT from_location_id, part_id, -quantity FROM movement WHERE from_location_id IS NOT NULL)
     JOIN location USING (location_id) JOIN part USING (part_id)
     GROUP BY location_id, part_id
     HAVING on_hand < 0 AND NOT EXISTS (
       SELECT 1 FROM movement AS early
       WHERE early.part_id = part.part_id AND early.from_location_id = location.location_id
         AND (early.used_before_booked = 1 OR early.reverses IS NOT NULL))`,
  )
  const named = below.map(line => `${line.on_hand} of ${line.part_number} in ${line.location}`)
  return { name: 'on hand', ok: below.length === 0, detail: named.join('; ') || 'no location is below zero' }
}

/** What was brought forward is what the movements up to then sum to. */
function checkBalances(database: ReadableDatabase): Check {
  const row = z.object({ differing: z.int() })
  const found = database.row(
    row,
    `WITH summed AS (
       SELECT location_id, part_id, sum(delta) AS quantity FROM (
         SELECT to_location_id AS location_id, part_id, quantity AS delta FROM movement
         WHERE to_location_id IS NOT NULL AND arrival <= (SELECT arrival FROM brought_forward_through)
         UNION ALL
         SELECT from_location_id, part_id, -quantity FROM movement
         WHERE from_location_id IS NOT NULL AND arrival <= (SELECT arrival FROM brought_forward_through))
       GROUP BY location_id, part_id)
     SELECT count(*) AS differing FROM summed FULL JOIN brought_forward AS kept USING (location_id, part_id)
     WHERE ifnull(summed.quantity, 0) <> ifnull(kept.quantity, 0)`,
  )
  const differing = found?.differing ?? 0
  return {
    name: 'balances brought forward',
    ok: differing === 0,
    detail:
      differing === 0
        ? 'each is the sum of its movements'
        : `${differing} are not the sum of their movements`,
  }
}

function checkOpeningStock(database: ReadableDatabase): Check {
  const row = z.object({ lines: z.int() })
  const lost = database.row(
    row,
    `SELECT count(*) AS lines FROM opening_stock
     WHERE quantity > 0 AND NOT EXISTS (
       SELECT 1 FROM movement WHERE to_location_id = opening_stock.location_id AND part_id = opening_stock.part_id)`,
  )
  const lines = lost?.lines ?? 0
  return {
    name: 'opening stock',
    ok: lines === 0,
    detail: lines === 0 ? 'every line has its movement' : `${lines} lines have no movement`,
  }
}
