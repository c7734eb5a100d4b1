import type { OrderSheet, SheetEvent, SheetSummary } from '../../shared-schemas/order-sheets.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import { reckonAmount, reckonShortfall, reckonTotals } from './reckon-totals.ts'
import {
  readEvents,
  readLines,
  readSheetOverrides,
  type StoredLine,
  type StoredSheet,
} from './sheet-queries.ts'
import { stateOf } from './sheet-states.ts'

/** A sheet as people read it, whole. */
export function readOrderSheet(database: ReadableDatabase, stored: StoredSheet): OrderSheet {
  const lines = readLines(database, stored.orderSheetId)
  const events = readEvents(database, stored.orderSheetId)
  const overrides = Map.groupBy(readSheetOverrides(database, stored.orderSheetId), ({ line }) => line)
  const head = headOf(stored, lines, events)
  return {
    ...head,
    carriageIsGiven: stored.carriageIsGiven,
    belowMinimumBy: reckonShortfall(head.net, stored.minimumOrder, stored.currency),
    lines: lines.map(({ partId: _id, ...line }) => ({
      ...line,
      amount: reckonAmount(line, stored.currency),
      overrides: (overrides.get(line.line) ?? []).map(({ line: _line, ...override }) => override),
    })),
    events,
  }
}

export function summariseSheet(database: ReadableDatabase, stored: StoredSheet): SheetSummary {
  const lines = readLines(database, stored.orderSheetId)
  const events = readEvents(database, stored.orderSheetId)
  return { ...headOf(stored, lines, events), lines: stored.lines, toCome: stored.toCome }
}

function headOf(stored: StoredSheet, lines: readonly StoredLine[], events: readonly SheetEvent[]) {
  const sent = events.find(({ what }) => what === 'sent')
  return {
    number: stored.number,
    supplier: stored.supplier,
    supplierName: stored.supplierName,
    currency: stored.currency,
    state: stateOf(stored),
    ...reckonTotals(lines, stored),
    createdAt: events[0]?.recordedAt ?? '',
    createdBy: events[0]?.initials ?? '',
    sentAt: sent?.recordedAt ?? null,
    sentBy: sent?.initials ?? null,
  }
}
