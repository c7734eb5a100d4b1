import type { Arrival } from '../../../shared-schemas/goods-in.ts'
import type { CheckedInput, Output } from '../../../shared-schemas/index.ts'
import type { OrderSheet } from '../../../shared-schemas/order-sheets.ts'
import { inTransaction, type ReadableDatabase } from '../../database/handles.ts'
import { currentShelf } from '../../fit-check/dossier-queries.ts'
import type { HandlersOf } from '../../requests/handlers.ts'
import { orRefuse, Refusal } from '../../requests/refusal.ts'
import type { Shop } from '../../requests/shop.ts'
import { readBookCurrency } from '../../stock-ledger/last-paid-queries.ts'
import { listLocations } from '../../stock-ledger/location-queries.ts'
import { locationNamed, quarantineNamed } from '../../stock-ledger/named-things.ts'
import { recordWithin } from '../../stock-ledger/record-movement.ts'
import { reverseWithin } from '../../stock-ledger/reverse-movement.ts'
import { asOrderLine, type CheckingShop } from '../check-sheet.ts'
import { partNumbered } from '../part-numbered.ts'
import { readOrderSheet } from '../read-order-sheet.ts'
import { readLines, type StoredLine, type StoredSheet, sheetNumbered } from '../sheet-queries.ts'
import { decideStage } from '../sheet-states.ts'
import {
  appendClosing,
  appendDelivery,
  appendDeliveryLine,
  findSheetOfDelivery,
  listClosings,
  listDeliveries,
} from './delivery-queries.ts'
import { judgeInAppliance, judgeOnShelf } from './judge-substitute.ts'
import { planReceipt } from './plan-receipt.ts'

export type GoodsInShop = CheckingShop & Pick<Shop, 'newId'>

export function goodsInHandlers(shop: GoodsInShop): HandlersOf<'goods-in'> {
  const { database } = shop
  return {
    'goods-in.receive-goods': delivery => receiveGoods(shop, delivery),
    'goods-in.judge-substitute': ({ number, line, part }) => {
      const sheet = sheetNumbered(database, number)
      return judgeSubstitute(shop, sheet, lineOf(database, sheet, line), part)
    },
    'goods-in.close-line': closing => closeLine(shop, closing, 'close'),
    'goods-in.expect-again': closing => closeLine(shop, closing, 'expect again'),
    'goods-in.take-back-delivery': taken => takeBack(shop, taken),
    'goods-in.read-deliveries': ({ number }) => {
      const { orderSheetId } = sheetNumbered(database, number)
      return {
        deliveries: listDeliveries(database, orderSheetId),
        closings: listClosings(database, orderSheetId),
      }
    },
  }
}

/** Every arrival is a movement of the ledger that names the sheet; all of them are recorded, or none. */
function receiveGoods(
  shop: GoodsInShop,
  { number, deliveryNote, to, quarantine, arrivals, initials }: CheckedInput<'goods-in.receive-goods'>,
): Output<'goods-in.receive-goods'> {
  return inTransaction(shop.database, database => {
    const stored = sheetNumbered(database, number)
    orRefuse(decideStage(stored, 'receive'))
    const { orderSheetId } = stored
    const hasDamaged = arrivals.some(({ condition }) => condition === 'damaged')
    const planned = orRefuse(
      planReceipt(
        {
          ...{ number, deliveryNote, lines: readLines(database, orderSheetId) },
          isBookCurrency: readBookCurrency(database) === stored.currency,
          to: placeOfGoods(database, to),
          quarantine: hasDamaged ? quarantineNamed(database, quarantine) : '',
        },
        arrivals.map(arrival => ({ ...arrival, isSubstitute: isSubstitute(shop, stored, arrival) })),
      ),
    )
    const receiptId = appendDelivery(database, shop, { orderSheetId, deliveryNote, initials })
    for (const { line, condition, ...moved } of planned) {
      const { movementId } = recordWithin(database, shop, {
        ...{ ...moved, from: 'supplier', reference: number, initials },
        ...{ usedBeforeBooked: false, takeReserved: false },
      })
      appendDeliveryLine(database, { receiptId, orderSheetId, line, movementId, condition })
    }
    return { receiptId, sheet: readOrderSheet(database, sheetNumbered(database, number)) }
  })
}

/** Whether something else came than was ordered. One that nothing proves is refused until somebody says why it is taken. */
function isSubstitute(shop: GoodsInShop, sheet: StoredSheet, { line, part, takenBecause }: Arrival): boolean {
  if (part === undefined) return false
  const ordered = lineOf(shop.database, sheet, line)
  if (partNumbered(shop.database, part).partId === ordered.partId) return false
  const { isProved, text, partNumber } = judgeSubstitute(shop, sheet, ordered, part)
  if (!isProved && takenBecause === undefined)
    throw new Refusal({
      code: 'substitute-not-proved',
      ...{ number: sheet.number, line, part: partNumber, ordered: ordered.partNumber, why: text },
    })
  return true
}

function judgeSubstitute(
  { database, checkOrder }: GoodsInShop,
  { supplier }: StoredSheet,
  line: StoredLine,
  typed: string,
): Output<'goods-in.judge-substitute'> {
  const came = partNumbered(database, typed)
  const named = { partNumber: came.partNumber, description: came.description, ordered: line.partNumber }
  if (came.partId === line.partId)
    return { ...named, verdict: null, isProved: true, text: 'It is what was ordered.', cautions: [] }
  const { family } = partNumbered(database, line.partNumber)
  const { replacements } = currentShelf(database).dossier(line.partId)
  const ordered = { partId: line.partId, partNumber: line.partNumber, family, replacements }
  if (line.for.modelNumber === null) return { ...named, ...judgeOnShelf(came, ordered) }
  const asked = { ...asOrderLine(line), partNumber: came.partNumber }
  const [checked] = checkOrder({ lines: [asked], supplier }).lines
  if (checked === undefined) throw new Error('the check of one line answers with one line')
  return { ...named, ...judgeInAppliance(came, ordered, checked) }
}

function closeLine(
  shop: GoodsInShop,
  { number, line, reason, initials }: CheckedInput<'goods-in.close-line'>,
  way: 'close' | 'expect again',
): { sheet: OrderSheet } {
  return inTransaction(shop.database, database => {
    const stored = sheetNumbered(database, number)
    orRefuse(decideStage(stored, 'close'))
    const { toCome, closed } = lineOf(database, stored, line)
    const pieces = way === 'close' ? toCome : -closed
    if (pieces === 0) throw new Refusal({ code: 'nothing-due', number, line, way })
    appendClosing(database, shop, { orderSheetId: stored.orderSheetId, line, pieces, reason, initials })
    return { sheet: readOrderSheet(database, sheetNumbered(database, number)) }
  })
}

function takeBack(
  shop: GoodsInShop,
  { receiptId, reason, initials }: CheckedInput<'goods-in.take-back-delivery'>,
): { sheet: OrderSheet } {
  return inTransaction(shop.database, database => {
    const number = findSheetOfDelivery(database, receiptId)
    if (number === undefined) throw new Refusal({ code: 'delivery-not-found', receiptId })
    const { orderSheetId } = sheetNumbered(database, number)
    const delivery = listDeliveries(database, orderSheetId).find(one => one.receiptId === receiptId)
    const standing = (delivery?.lines ?? []).filter(({ isTakenBack }) => !isTakenBack)
    if (standing.length === 0) throw new Refusal({ code: 'delivery-taken-back-already', number })
    for (const { movementId } of standing) reverseWithin(database, shop, { movementId, reason, initials })
    return { sheet: readOrderSheet(database, sheetNumbered(database, number)) }
  })
}

function lineOf(database: ReadableDatabase, { number, orderSheetId }: StoredSheet, line: number): StoredLine {
  const found = readLines(database, orderSheetId).find(one => one.line === line)
  if (found === undefined) throw new Refusal({ code: 'line-not-on-sheet', number, line })
  return found
}

/** The place that was named, or the shop's first. */
function placeOfGoods(database: ReadableDatabase, typed: string | undefined): string {
  if (typed !== undefined) return locationNamed(database, typed).location
  const locations = listLocations(database)
  const first = locations.find(({ kind }) => kind === 'shop') ?? locations[0]
  if (first === undefined) throw new Refusal({ code: 'location-not-found', typed: 'shop', known: [] })
  return first.location
}
