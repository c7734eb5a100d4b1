import type { CheckedInput, Output } from '../../shared-schemas/index.ts'
import { readPart } from '../catalogue/part-queries.ts'
import { inTransaction, type WritableDatabase } from '../database/handles.ts'
import { Refusal } from '../requests/refusal.ts'
import { locationNamed, partNumbered } from '../stock-ledger/named-things.ts'
import { readOnHand } from '../stock-ledger/on-hand-queries.ts'
import type { RecordingShop } from '../stock-ledger/record-movement.ts'
import {
  appendCount,
  appendReading,
  appendWithdrawal,
  type FoundCount,
  findCount,
  findOpenCount,
  listLastReadings,
} from './count-queries.ts'
import { appendExplanation } from './explanation-queries.ts'

/** Begins the count of a location, or goes on with the one that is open. */
export function beginCount(
  shop: RecordingShop,
  { location, initials = '' }: CheckedInput<'van-counts.begin-count'>,
): Output<'van-counts.begin-count'> {
  return inTransaction(shop.database, database => {
    const { locationId } = locationNamed(database, location)
    const open = findOpenCount(database, locationId, shop.device)
    if (open !== undefined) return { countId: open.countId, isNew: false }
    return { countId: appendCount(database, shop, { locationId, initials }), isNew: true }
  })
}

/** Takes one reading, and fixes it against the book of this moment. */
export function recordReading(
  shop: RecordingShop,
  { countId, part, pieces, how, initials = '' }: CheckedInput<'van-counts.record-reading'>,
): Output<'van-counts.record-reading'> {
  return inTransaction(shop.database, database => {
    const { locationId } = openCount(database, shop, countId)
    const { partId, partNumber } = partNumbered(database, part)
    const [before] = how === 'add' ? listLastReadings(database, countId, partId) : []
    const counted = (before?.counted ?? 0) + pieces
    const book = readOnHand(database, locationId, partId)
    // What was read before lay there under the book of its own moment; what moved since is not on the shelf any more.
    const movedSince = before === undefined ? 0 : book - before.book
    const reading = { partId, counted: Math.max(0, counted + movedSince), book, initials }
    const readingId = appendReading(database, shop, countId, { ...reading, begins: before === undefined })
    return { partNumber, counted: reading.counted, readingId }
  })
}

/** Takes a reading back, if it is the last of its part that stands. */
export function withdrawReading(
  shop: RecordingShop,
  { countId, readingId, initials = '' }: CheckedInput<'van-counts.withdraw-reading'>,
): Output<'van-counts.withdraw-reading'> {
  return inTransaction(shop.database, database => {
    openCount(database, shop, countId)
    const last = listLastReadings(database, countId).find(read => read.readingId === readingId)
    if (last === undefined) throw new Refusal({ code: 'reading-not-last', readingId })
    appendWithdrawal(database, shop, { readingId, initials })
    const [before] = listLastReadings(database, countId, last.partId)
    return { partNumber: readPart(database, last.partId).partNumber, counted: before?.counted ?? null }
  })
}

/** Keeps what staff say a variance is. */
export function explainVariance(
  shop: RecordingShop,
  { countId, part, kind, detail, initials = '' }: CheckedInput<'van-counts.explain-variance'>,
): Output<'van-counts.explain-variance'> {
  return inTransaction(shop.database, database => {
    openCount(database, shop, countId)
    const { partId, partNumber } = partNumbered(database, part)
    appendExplanation(database, shop, countId, { partId, kind, detail, initials })
    return { partNumber }
  })
}

/** The count, if readings may still be taken for it: it is not posted, and was begun on this machine. */
export function openCount(
  database: WritableDatabase,
  { device }: RecordingShop,
  countId: string,
): FoundCount {
  const count = findCount(database, countId)
  if (count === undefined) throw new Refusal({ code: 'count-not-found', countId })
  if (count.postedAt !== null)
    throw new Refusal({ code: 'count-posted-already', countId, postedAt: count.postedAt })
  if (count.device !== device) throw new Refusal({ code: 'count-of-other-machine', device: count.device })
  return count
}
