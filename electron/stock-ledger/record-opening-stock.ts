import type { WritableDatabase } from '../database/handles.ts'
import { appendMovement, type MovementStamp, plainMovement, type StockMovement } from './append-movements.ts'

/** What a catalogue file states to have been in a place at the start, and what it stated before, if it did. */
export interface OpeningStock {
  readonly partId: number
  readonly locationId: number
  readonly before: number | null
  readonly now: number
}

/** Books opening stock: all of it the first time, and after that only by how much the statement has changed. */
export function recordOpeningStock(
  database: WritableDatabase,
  stamp: MovementStamp,
  opening: OpeningStock,
): void {
  const movement = planOpeningMovement(opening)
  if (movement !== undefined) appendMovement(database, stamp, movement)
}

/** The movement that a statement of opening stock asks for; none when the quantity is as it was. */
export function planOpeningMovement({
  partId,
  locationId,
  before,
  now,
}: OpeningStock): StockMovement | undefined {
  const difference = now - (before ?? 0)
  if (difference === 0) return undefined
  return {
    ...plainMovement,
    outside: 'opening',
    kind: before === null ? 'receipt' : 'adjustment',
    partId,
    quantity: Math.abs(difference),
    fromLocationId: difference < 0 ? locationId : null,
    toLocationId: difference > 0 ? locationId : null,
    initials: '',
    reason: before === null ? 'opening stock' : 'opening stock corrected',
  }
}
