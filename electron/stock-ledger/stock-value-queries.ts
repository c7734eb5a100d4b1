import { Big } from 'big.js'
import type { Output } from '../../shared-schemas/index.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import { type CostEvent, type PartCost, reckonCost, wordAmount } from './stock-value.ts'

/** What the stock of a location, or all of it, is worth: pieces by the book times the cost of the part in the whole shop. */
export function readStockValue(
  database: ReadableDatabase,
  onHand: readonly { readonly partId: number; readonly quantity: number }[],
): Output<'stock-ledger.read-stock-value'> {
  const costs = readCosts(database)
  let [pieces, piecesWithoutCost, atLast, atAverage] = [0, 0, new Big(0), new Big(0)]
  for (const { partId, quantity } of onHand) {
    pieces += quantity
    const { last, average } = costs.get(partId) ?? noCost
    if (last === null || average === null) piecesWithoutCost += quantity
    else {
      atLast = atLast.plus(last.times(quantity))
      atAverage = atAverage.plus(average.times(quantity))
    }
  }
  return { pieces, piecesWithoutCost, atLastCost: wordAmount(atLast), atMovingAverage: wordAmount(atAverage) }
}

const noCost: PartCost = { last: null, average: null }

/** Only parts for which something was paid have a cost, and only theirs are read. */
export function readCosts(database: ReadableDatabase): ReadonlyMap<number, PartCost> {
  const events = new Map<number, CostEvent[]>()
  const rows = database.tuples<[number, number, string | null]>(
    `SELECT part_id, CASE WHEN to_location_id IS NULL THEN -quantity ELSE quantity END, unit_cost
     FROM movement
     WHERE kind <> 'transfer'
       AND part_id IN (SELECT part_id FROM movement WHERE unit_cost IS NOT NULL)
     ORDER BY movement_id`,
  )
  for (const [partId, quantity, unitCost] of rows) {
    const ofPart = events.get(partId)
    if (ofPart === undefined) events.set(partId, [{ quantity, unitCost }])
    else ofPart.push({ quantity, unitCost })
  }
  return new Map([...events].map(([partId, ofPart]) => [partId, reckonCost(ofPart)]))
}

/** What was paid last for one piece of each of these parts; one for which nothing was paid is left out. */
export function readLastCosts(
  database: ReadableDatabase,
  partIds: readonly number[],
): ReadonlyMap<number, string> {
  return new Map(
    database.tuples<[number, string]>(
      `SELECT asked.value, unit_cost FROM json_each(?) AS asked CROSS JOIN movement
         ON movement_id = (SELECT paid.movement_id FROM movement AS paid
           WHERE paid.part_id = asked.value AND paid.unit_cost IS NOT NULL ORDER BY paid.movement_id DESC LIMIT 1)`,
      JSON.stringify(partIds),
    ),
  )
}
