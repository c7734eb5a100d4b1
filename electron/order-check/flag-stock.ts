import type { OfferedMove, OrderFlag } from '../../shared-schemas/order-check.ts'
import { isYes } from './find-current-number.ts'
import { flag } from './flag-table.ts'
import { type LineFacts, piecesOf } from './line-facts.ts'

/**
 * What is here already, or on its way. A job that the shelf can serve is worth a look; for stock, or while it is not
 * proved to fit, it is good to know.
 */
export function flagStock(facts: LineFacts): OrderFlag[] {
  return [...flagOnHand(facts), ...flagOpenOrders(facts)]
}

function flagOnHand(facts: LineFacts): OrderFlag[] {
  const { moves, part, judged } = facts
  const here = moves.reduce((sum, { quantity }) => sum + quantity, 0)
  const pieces = piecesOf(facts)
  if (part === undefined || here === 0 || pieces === undefined) return []
  const places = moves.map(move => wordMove(move, part.partNumber)).join('; ')
  const serves = here >= pieces && judged !== undefined && isYes(judged.decision.verdict)
  return serves
    ? [flag('in-stock', `Here already: ${places}. Move ${pieces} instead of buying.`)]
    : [flag('some-in-stock', `Here already: ${places}.`)]
}

function wordMove({ partNumber, name, location, bin, quantity }: OfferedMove, asked: string): string {
  const which = partNumber === asked ? '' : ` of ${partNumber}`
  return `${quantity}${which} in ${name || location}${bin === null ? '' : `, bin ${bin}`}`
}

function flagOpenOrders({ part, openOrders }: LineFacts): OrderFlag[] {
  if (part === undefined || openOrders.length === 0) return []
  const orders = openOrders.map(({ order, supplier, quantity }) => `${quantity} on ${order} from ${supplier}`)
  return [
    flag('on-open-order', `On order already: ${orders.join('; ')}. Order more only if both are wanted.`),
  ]
}
