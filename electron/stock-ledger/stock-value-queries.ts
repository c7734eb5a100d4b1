import { Big } from 'big.js'
import type { Output } from '../../shared-schemas/index.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import { type CostEvent, type PartCost, reckonCost, wordAmount } from './stock-value.ts'

/** What the stock of a location, or all of it, is worth: pieces by the book times the cost of the part in the whole shop. */
export function readStockValue(
  database: ReadableDatabase,
  onHand: readonly { readonly partNumber: string; readonly quantity: number }[],
): Output<'stock-ledger.read-stock-value'> {
  const costs = readCosts(database)
  let [pieces, piecesWithoutCost, atLast, atAverage] = [0, 0, new Big(0), new Big(0)]
  for (const { partNumber, quantity } of onHand) {
    pieces += quantity
    const { last, average } = costs.get(partNumber) ?? noCost
    if (last === null || average === null) piecesWithoutCost += quantity
    else {
      atLast = atLast.plus(last.times(quantity))
      atAverage = atAverage.plus(average.times(quantity))
    }
  }
  return { pieces, piecesWithoutCost, atLastCost: wordAmount(atLast), atMovingAverage: wordAmount(atAverage) }
}

const noCost: PartCost = { last: null, average: null }

/** By part number. Only parts for which something was paid have a cost, and only theirs are read. */
function readCosts(database: ReadableDatabase): ReadonlyMap<string, PartCost> {
  const events = new Map<string, CostEvent[]>()
  const rows = database.tuples<[string, number, string | null]>(
    `SELECT part_number, CASE WHEN to_location_id IS NULL THEN -quantity ELSE quantity END, unit_cost
     FROM movement CROSS JOIN part USING (part_id)
     WHERE kind <> 'transfer'
       AND part_id IN (SELECT part_id FROM movement WHERE unit_cost IS NOT NULL)
     ORDER BY movement_id`,
  )
  for (const [partNumber, quantity, unitCost] of rows) {
    const ofPart = events.get(partNumber) ?? []
    ofPart.push({ quantity, unitCost })
    events.set(partNumber, ofPart)
  }
  return new Map([...events].map(([partNumber, ofPart]) => [partNumber, reckonCost(ofPart)]))
}
