import { z } from 'zod'
import { verdict } from './fit-check.ts'
import { initials } from './initials.ts'
import { orderSheet, sheetNumber } from './order-sheets.ts'
import { defineRequest } from './request.ts'
import { money } from './stock-ledger.ts'

const partTyped = z.string().trim().min(1).max(60)
const placeTyped = z.string().trim().min(1).max(40)
const inWords = z.string().trim().min(1).max(400)
const lineNumber = z.int().min(1)
const signed = { initials: initials.optional() }

/** Pieces that came for one line of a sheet. */
export const arrival = z.object({
  line: lineNumber,
  /** What came, where that is not what was ordered. */
  part: partTyped.optional(),
  quantity: z.int().min(1).max(999_999),
  /** Damaged pieces go into quarantine and stay due. */
  condition: z.enum(['good', 'damaged']).default('good'),
  /** What one piece costs, in the currency of the book; otherwise the price of the line, where that is in it. */
  unitPrice: money.optional(),
  /** Why a substitute is taken in though nothing proves that it may stand for what was ordered. */
  takenBecause: inWords.optional(),
})
export type Arrival = z.output<typeof arrival>

/** Takes a delivery in against a sheet: one movement for each arrival, all of them or none. */
export const receiveGoods = defineRequest({
  name: 'goods-in.receive-goods',
  input: z.object({
    number: sheetNumber,
    deliveryNote: z.string().trim().max(60).default(''),
    /** Where it goes; the shop's first location unless told. */
    to: placeTyped.optional(),
    quarantine: placeTyped.optional(),
    arrivals: z.array(arrival).min(1, 'nothing has come yet: scan or type what did').max(2000),
    ...signed,
  }),
  output: z.object({ receiptId: z.string(), sheet: orderSheet }),
})

/** Whether a part may stand for the one that was ordered: in the line's appliance, or wherever that may go. */
export const judgeSubstitute = defineRequest({
  name: 'goods-in.judge-substitute',
  input: z.object({ number: sheetNumber, line: lineNumber, part: partTyped }),
  output: z.object({
    partNumber: z.string(),
    description: z.string(),
    ordered: z.string(),
    /** Of the fit check, where the line is for an appliance. */
    verdict: verdict.nullable(),
    isProved: z.boolean(),
    text: z.string(),
    cautions: z.array(z.string()),
  }),
})

/** Says that what is still to come of a line will not come any more. */
export const closeLine = defineRequest({
  name: 'goods-in.close-line',
  input: z.object({ number: sheetNumber, line: lineNumber, reason: inWords, ...signed }),
  output: z.object({ sheet: orderSheet }),
})

/** Expects what was closed of a line after all. */
export const expectAgain = defineRequest({
  name: 'goods-in.expect-again',
  input: z.object({ number: sheetNumber, line: lineNumber, reason: inWords, ...signed }),
  output: z.object({ sheet: orderSheet }),
})

/** Takes back all of a delivery that still stands in the book, by movements the other way. */
export const takeBackDelivery = defineRequest({
  name: 'goods-in.take-back-delivery',
  input: z.object({ receiptId: z.string().trim().min(1).max(40), reason: inWords, ...signed }),
  output: z.object({ sheet: orderSheet }),
})

export const delivery = z.object({
  receiptId: z.string(),
  deliveryNote: z.string(),
  recordedAt: z.string(),
  initials: z.string(),
  lines: z.array(
    z.object({
      line: z.int(),
      movementId: z.string(),
      partNumber: z.string(),
      quantity: z.int(),
      condition: z.enum(['good', 'damaged']),
      to: z.string(),
      unitCost: z.string().nullable(),
      isTakenBack: z.boolean(),
    }),
  ),
})
export type Delivery = z.infer<typeof delivery>

/** What came of a sheet and when, and what was closed and why; the oldest first. */
export const readDeliveries = defineRequest({
  name: 'goods-in.read-deliveries',
  input: z.object({ number: sheetNumber }),
  output: z.object({
    deliveries: z.array(delivery),
    closings: z.array(
      z.object({
        line: z.int(),
        /** Below 0 the pieces are expected again. */
        pieces: z.int(),
        reason: z.string(),
        recordedAt: z.string(),
        initials: z.string(),
      }),
    ),
  }),
})
