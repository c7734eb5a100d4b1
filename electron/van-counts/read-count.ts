import type { CountLine, Explanation, StockCount } from '../../shared-schemas/van-counts.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import { Refusal } from '../requests/refusal.ts'
import { readBook } from '../stock-ledger/on-hand-queries.ts'
import { readCountFacts } from './count-facts-queries.ts'
import {
  type CountedPart,
  type FoundCount,
  findCount,
  type LastReading,
  listCountedParts,
  listLastReadings,
  readLastPosted,
} from './count-queries.ts'
import { listSettled, type SettledExplanation } from './explanation-queries.ts'
import { readValueClasses } from './part-value-queries.ts'
import { type ProposedExplanation, proposeExplanations, type Variance } from './propose-explanations.ts'
import { isWithinTolerance, recordAccuracy } from './tolerance.ts'
import { wordExplanation } from './word-explanation.ts'

/** A count as it stands. Blind: without the book, and without whatever follows from it, until it is compared. */
export function readCount(
  database: ReadableDatabase,
  { countId, compare }: { readonly countId: string; readonly compare: boolean },
): StockCount {
  const count = findCount(database, countId)
  if (count === undefined) throw new Refusal({ code: 'count-not-found', countId })
  const lines = compareLines(database, count)
  const counted = lines.filter(line => line.counted !== null)
  const { location, begunAt, initials, postedAt } = count
  const isOpen = postedAt === null && !compare
  return {
    ...{ countId, location, begunAt, initials, postedAt },
    lines: isOpen ? lines.map(asBlind) : lines,
    recordAccuracy: isOpen ? null : recordAccuracy(counted),
  }
}

function asBlind(line: CountLine): CountLine {
  return {
    ...line,
    book: null,
    variance: null,
    toRecount: false,
    isWithin: false,
    settled: null,
    proposed: [],
  }
}

/** Every line of the location: what was counted, beside the book at that moment, and what the book has besides. */
export function compareLines(database: ReadableDatabase, count: FoundCount): CountLine[] {
  const readings = new Map(listLastReadings(database, count.countId).map(read => [read.partId, read]))
  const book = count.postedAt === null ? readBook(database, count.locationId) : new Map<number, number>()
  const parts = listCountedParts(database, count.locationId, [
    ...new Set([...readings.keys(), ...book.keys()]),
  ])
  const classes = readValueClasses(database, count.begunAt.slice(0, 10))
  const settled = listSettled(database, count.countId)
  const proposed = Map.groupBy(propose(database, count, parts, readings), ({ partId }) => partId)
  return parts.map(part => {
    const reading = readings.get(part.partId)
    const isWithin = reading !== undefined && isWithinTolerance(reading, classes.get(part.partId) ?? 'C')
    return {
      ...wordPart(part),
      ...wordReading(reading, book.get(part.partId) ?? 0),
      isWithin,
      toRecount: reading !== undefined && !isWithin && reading.readings === 1,
      settled: asSettled(settled.get(part.partId)),
      proposed: (proposed.get(part.partId) ?? []).map(({ kind, detail, text }) => ({ kind, detail, text })),
    }
  })
}

function wordPart({ partNumber, family, description, bin }: CountedPart) {
  return { partNumber, family, description, bin }
}

function wordReading(reading: LastReading | undefined, bookNow: number) {
  if (reading === undefined)
    return { book: bookNow, counted: null, variance: null, readAt: null, readings: 0 }
  const { book, counted, readAt, readings } = reading
  return { book, counted, variance: counted - book, readAt, readings }
}

function asSettled(said: SettledExplanation | undefined): Explanation | null {
  return said === undefined ? null : { kind: said.kind, detail: said.detail, text: wordExplanation(said) }
}

function propose(
  database: ReadableDatabase,
  count: FoundCount,
  parts: readonly CountedPart[],
  readings: ReadonlyMap<number, LastReading>,
): ProposedExplanation[] {
  const variances = parts.flatMap((part): Variance[] => {
    const reading = readings.get(part.partId)
    return reading === undefined || reading.counted === reading.book ? [] : [{ ...part, ...reading }]
  })
  if (variances.length === 0) return []
  const since = readLastPosted(database, count.locationId) ?? monthBefore(count.begunAt)
  const facts = readCountFacts(database, count.locationId, {
    partIds: variances.map(({ partId }) => partId),
    since,
  })
  return proposeExplanations(variances, facts)
}

/** Where nothing was ever counted, older jobs and transfers explain little. */
function monthBefore(moment: string): string {
  const day = new Date(moment)
  day.setUTCDate(day.getUTCDate() - 31)
  return day.toISOString()
}
