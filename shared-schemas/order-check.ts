import { z } from 'zod'
import { verdict } from './fit-check.ts'
import { initials } from './initials.ts'
import { defineRequest } from './request.ts'

/** The columns of an order file, as COMMANDS and the screen name them. Only the part number is needed. */
export const orderColumns = ['part_number', 'quantity', 'brand', 'model_number', 'made', 'serial'] as const

const asWritten = (longest: number) => z.string().trim().max(longest)

/** What a line of an order says, as it was written: the check says what is wrong with it. */
export const orderLine = z.object({
  /** On which line of the file it stands. */
  line: z.int(),
  partNumber: asWritten(200),
  /** As written; missing means one. */
  quantity: z.union([z.number(), asWritten(60)]).optional(),
  brand: asWritten(60).optional(),
  /** What can be read of the appliance's model number; a line without one is for stock. */
  modelNumber: asWritten(400).optional(),
  made: asWritten(60).optional(),
  serial: asWritten(60).optional(),
})
export type OrderLine = z.output<typeof orderLine>

const supplierCode = z.string().trim().min(1).max(40)

export const severity = z.enum(['stop', 'caution', 'note'])
export type Severity = z.infer<typeof severity>

/** Why somebody let a stop pass. */
export const stopOverride = z.object({ reason: z.string(), initials: z.string(), recordedAt: z.string() })
export type StopOverride = z.infer<typeof stopOverride>

export const orderFlag = z.object({
  code: z.string(),
  severity,
  text: z.string(),
  /** For a stop: whether a person may let it pass, with a reason and initials. */
  mayOverride: z.boolean().optional(),
  /** For a stop that was let pass and is a note since: by whom, when and why. */
  override: stopOverride.optional(),
})
export type OrderFlag = z.infer<typeof orderFlag>

/** Pieces that are here already, in the shop or on a van, and could be moved instead of bought. */
export const offeredMove = z.object({
  partNumber: z.string(),
  location: z.string(),
  name: z.string(),
  bin: z.string().nullable(),
  quantity: z.int(),
})
export type OfferedMove = z.infer<typeof offeredMove>

export const checkedLine = z.object({
  line: z.int(),
  /** As written on the order. */
  partNumber: z.string(),
  /** Null where what is written is no quantity. */
  quantity: z.int().nullable(),
  /** Null for a line without an appliance: nothing was asked about fit. */
  verdict: verdict.nullable(),
  flags: z.array(orderFlag),
  description: z.string().nullable(),
  /** The number to order today; null where the catalogue has no such part, or a reading decides. */
  orderNumber: z.string().nullable(),
  /** The appliance that was meant, where the text leaves one model open. */
  model: z.object({ brand: z.string(), modelNumber: z.string() }).nullable(),
  moves: z.array(offeredMove),
})
export type CheckedLine = z.infer<typeof checkedLine>

export const checkedOrder = z.object({
  lines: z.array(checkedLine),
  stops: z.int(),
  cautions: z.int(),
  notes: z.int(),
})
export type CheckedOrder = z.infer<typeof checkedOrder>

export const mostOrderLines = 10_000

/** Is this order right? Every line for fit and sense, before money leaves. */
export const checkOrder = defineRequest({
  name: 'order-check.check-order',
  input: z.object({
    lines: z.array(orderLine).min(1, 'an order has at least one line').max(mostOrderLines),
    /** Who is to be sent the order; without one, every supplier's offer counts. */
    supplier: supplierCode.optional(),
  }),
  output: checkedOrder,
})

/** The lines of an order from the text of a CSV, or as pasted from a spreadsheet. */
export const readOrder = defineRequest({
  name: 'order-check.read-order',
  input: z.object({
    text: z.string().max(20_000_000),
    /** What the text is called when something is wrong with it: a file's name, or what was pasted. */
    name: z.string().trim().min(1).max(1000),
  }),
  output: z.object({ lines: z.array(orderLine) }),
})

/** Why a stop is let pass, in words that somebody else can follow. */
export const overrideReason = z
  .string()
  .trim()
  .max(400)
  .regex(/\p{L}.*\p{L}.*\p{L}/su, 'a reason says why in words')

/** Lets one stop pass for one part and appliance, for a reason that is kept with the initials of who gave it. */
export const overrideStop = defineRequest({
  name: 'order-check.override-stop',
  input: z.object({
    line: orderLine,
    supplier: supplierCode.optional(),
    code: z.string().trim().min(1).max(60),
    reason: overrideReason,
    initials,
  }),
  output: z.object({ overrideId: z.string(), recordedAt: z.string() }),
})

/** The suppliers an order can be sent to. */
export const listSuppliers = defineRequest({
  name: 'order-check.list-suppliers',
  input: z.object({}),
  output: z.object({ suppliers: z.array(z.object({ supplier: z.string(), name: z.string() })) }),
})
