import { Big } from 'big.js'
import type { Output } from '../../shared-schemas/index.ts'
import type { CountLine } from '../../shared-schemas/van-counts.ts'
import { inTransaction, type WritableDatabase } from '../database/handles.ts'
import { Refusal } from '../requests/refusal.ts'
import { appendMovement, plainMovement } from '../stock-ledger/append-movements.ts'
import { partNumbered } from '../stock-ledger/named-things.ts'
import type { RecordingShop } from '../stock-ledger/record-movement.ts'
import { wordAmount } from '../stock-ledger/stock-value.ts'
import type { FoundCount } from './count-queries.ts'
import { readUnitValues } from './part-value-queries.ts'
import { compareLines } from './read-count.ts'
import { openCount } from './record-reading.ts'
import { recordAccuracy } from './tolerance.ts'

type Counted = CountLine & { readonly variance: number; readonly partId: number }

/**
 * Books what was counted, in one transaction: each variance as one movement with its reason, a job line as the issue
 * that was forgotten. After it the book of each counted part is what was counted, and what was moved since.
 */
export function postCount(
  shop: RecordingShop,
  { countId, initials = '' }: { readonly countId: string; readonly initials?: string | undefined },
): Output<'van-counts.post-count'> {
  return inTransaction(shop.database, database => {
    const count = openCount(database, shop, countId)
    const counted = listCounted(database, count)
    if (counted.length === 0) throw new Refusal({ code: 'nothing-counted', location: count.location })
    const off = counted.filter(({ variance }) => variance !== 0)
    for (const line of off) book(database, shop, count, { line, initials })
    const values = reckonValues(database, off)
    const within = counted.filter(({ isWithin }) => isWithin).length
    database.run(
      `INSERT INTO count_posting (count_id, posted_at, device, initials, lines, lines_within, value_gained, value_lost)
       VALUES (?, ?, ?, ?, ?, ?, ?, ?)`,
      ...[countId, shop.now().toISOString(), shop.device, initials, counted.length, within],
      ...[values.valueGained, values.valueLost],
    )
    return { movements: off.length, recordAccuracy: recordAccuracy(counted) ?? 1, ...values }
  })
}

function listCounted(database: WritableDatabase, count: FoundCount): Counted[] {
  return compareLines(database, count).flatMap(line =>
    line.variance === null
      ? []
      : [{ ...line, variance: line.variance, partId: partNumbered(database, line.partNumber).partId }],
  )
}

function book(
  database: WritableDatabase,
  shop: RecordingShop,
  { countId, locationId }: FoundCount,
  { line, initials }: { readonly line: Counted; readonly initials: string },
): void {
  const { partId, variance, settled } = line
  const isJob = settled?.kind === 'job-line' && variance < 0
  appendMovement(database, shop, {
    ...plainMovement,
    kind: isJob ? 'issue' : 'adjustment',
    outside: isJob ? 'job' : 'count',
    partId,
    quantity: Math.abs(variance),
    fromLocationId: variance < 0 ? locationId : null,
    toLocationId: variance > 0 ? locationId : null,
    initials,
    reason: settled?.text ?? (variance < 0 ? 'lost' : 'found'),
    reference: isJob ? settled.detail : countId,
  })
}

function reckonValues(database: WritableDatabase, off: readonly Counted[]) {
  const units = readUnitValues(
    database,
    off.map(({ partId }) => partId),
  )
  const sum = (lines: readonly Counted[]) =>
    lines.reduce(
      (total, { partId, variance }) =>
        total.plus((units.get(partId) ?? new Big(0)).times(Math.abs(variance))),
      new Big(0),
    )
  return {
    valueGained: wordAmount(sum(off.filter(({ variance }) => variance > 0))),
    valueLost: wordAmount(sum(off.filter(({ variance }) => variance < 0))),
  }
}
