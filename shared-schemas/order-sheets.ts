import { z } from 'zod'
import { initials } from './initials.ts'
import { checkedOrder, mostOrderLines } from './order-check.ts'
import { decimal } from './quantities.ts'
import { defineRequest } from './request.ts'

export const sheetNumber = z
  .string()
  .trim()
  .regex(/^\d{4}-\d{4,}$/, 'is no number of an order sheet: write it as 2026-0007')
const supplierTyped = z.string().trim().min(1).max(40)
const partTyped = z.string().trim().min(1).max(60)
const pieces = z.int().min(1).max(999_999)
const inWords = z.string().trim().min(1).max(400)
const said = (longest: number) => z.string().trim().min(1).max(longest)

/** `part-received` and `received` come of the deliveries; a sheet of which nothing will come any more is `cancelled`. */
export const sheetState = z.enum(['draft', 'checked', 'sent', 'part-received', 'received', 'cancelled'])
export type SheetState = z.infer<typeof sheetState>

/** What a line is for, where it is not for the shelf. */
const meantFor = z.object({
  brand: said(60).optional(),
  modelNumber: said(400).optional(),
  made: said(60).optional(),
  serial: said(60).optional(),
  job: said(60).optional(),
  customer: said(60).optional(),
})

/** A line as it is drafted. What is left out is taken from the supplier's offer for that quantity. */
export const draftLine = meantFor.extend({
  part: partTyped,
  /** In pieces. */
  quantity: pieces,
  supplierCode: said(60).optional(),
  pack: pieces.optional(),
  /** For one piece, in the supplier's currency. */
  unitPrice: decimal.optional(),
})
export type DraftLine = z.output<typeof draftLine>

const draftLines = z.array(draftLine).min(1, 'an order sheet has at least one line').max(mostOrderLines)

export const sheetLine = z.object({
  line: z.int(),
  partNumber: z.string(),
  description: z.string(),
  supplierCode: z.string().nullable(),
  quantity: z.int(),
  pack: z.int(),
  unitPrice: z.string(),
  /** Quantity by price, rounded half up to the smallest coin. */
  amount: z.string(),
  for: z.object({
    brand: z.string().nullable(),
    modelNumber: z.string().nullable(),
    made: z.string().nullable(),
    serial: z.string().nullable(),
    job: z.string().nullable(),
    customer: z.string().nullable(),
  }),
  /** Pieces that came whole, those that came damaged, those that will not come any more, and those still to come. */
  received: z.int(),
  damaged: z.int(),
  closed: z.int(),
  toCome: z.int(),
  /** Stops of the order check that somebody let pass. */
  overrides: z.array(
    z.object({ code: z.string(), reason: z.string(), initials: z.string(), recordedAt: z.string() }),
  ),
})
export type SheetLine = z.infer<typeof sheetLine>

/** Something that was done with a sheet, by whom and when. */
export const sheetEvent = z.object({
  what: z.enum(['drafted', 'changed', 'checked', 'reopened', 'sent', 'cancelled']),
  reason: z.string(),
  recordedAt: z.string(),
  initials: z.string(),
})
export type SheetEvent = z.infer<typeof sheetEvent>

const sheetHead = z.object({
  number: z.string(),
  supplier: z.string(),
  supplierName: z.string(),
  currency: z.string(),
  state: sheetState,
  /** Exact decimals: the sum of the lines, the carriage, and both. */
  net: z.string(),
  carriage: z.string(),
  total: z.string(),
  createdAt: z.string(),
  createdBy: z.string(),
  /** Null until it was sent. */
  sentAt: z.string().nullable(),
  sentBy: z.string().nullable(),
})

export const sheetSummary = sheetHead.extend({ lines: z.int(), toCome: z.int() })
export type SheetSummary = z.infer<typeof sheetSummary>

export const orderSheet = sheetHead.extend({
  carriageIsGiven: z.boolean(),
  /** What is missing to the supplier's minimum order; null where nothing is. */
  belowMinimumBy: z.string().nullable(),
  lines: z.array(sheetLine),
  events: z.array(sheetEvent),
})
export type OrderSheet = z.infer<typeof orderSheet>

const signed = { initials: initials.optional() }

/** Makes drafts, each with the next number: all of them or none. */
export const draftSheets = defineRequest({
  name: 'order-sheets.draft-sheets',
  input: z.object({
    sheets: z
      .array(
        z.object({
          supplier: supplierTyped,
          /** Without it, by the supplier's terms. */
          carriage: decimal.optional(),
          lines: draftLines,
        }),
      )
      .min(1)
      .max(100),
    ...signed,
  }),
  output: z.object({ sheets: z.array(orderSheet) }),
})

export const readSheet = defineRequest({
  name: 'order-sheets.read-sheet',
  input: z.object({ number: sheetNumber }),
  output: z.object({ sheet: orderSheet }),
})

/** The sheets in these states, or all, the latest first. */
export const listSheets = defineRequest({
  name: 'order-sheets.list-sheets',
  input: z.object({
    states: z.array(sheetState).min(1).optional(),
    supplier: supplierTyped.optional(),
    most: z.int().min(1).max(1000).default(200),
  }),
  output: z.object({ sheets: z.array(sheetSummary) }),
})

/** Puts these lines in the place of a draft's. */
export const changeLines = defineRequest({
  name: 'order-sheets.change-lines',
  input: z.object({ number: sheetNumber, carriage: decimal.optional(), lines: draftLines, ...signed }),
  output: z.object({ sheet: orderSheet }),
})

/** Runs the order check on a draft. Without a stop left, the sheet is checked; else it stays a draft. */
export const checkSheet = defineRequest({
  name: 'order-sheets.check-sheet',
  input: z.object({ number: sheetNumber, ...signed }),
  output: z.object({ sheet: orderSheet, checked: checkedOrder }),
})

/** Makes a draft of a checked sheet again, to change it. */
export const reopenSheet = defineRequest({
  name: 'order-sheets.reopen-sheet',
  input: z.object({ number: sheetNumber, ...signed }),
  output: z.object({ sheet: orderSheet }),
})

/** Says that a checked sheet goes to its supplier, and keeps what goes: from now on its pieces are on order. */
export const sendSheet = defineRequest({
  name: 'order-sheets.send-sheet',
  input: z.object({ number: sheetNumber, ...signed }),
  output: z.object({ sheet: orderSheet }),
})

/** Cancels a sheet of which nothing has come. Its number stays its own. */
export const cancelSheet = defineRequest({
  name: 'order-sheets.cancel-sheet',
  input: z.object({ number: sheetNumber, reason: inWords, ...signed }),
  output: z.object({ sheet: orderSheet }),
})

/** Pieces of a part that a supplier still owes. */
export const onOrder = z.object({
  partNumber: z.string(),
  number: z.string(),
  supplier: z.string(),
  quantity: z.int(),
  sentAt: z.string(),
})
export type OnOrder = z.infer<typeof onOrder>

/** What is still to come of sheets that were sent, the oldest first; of one part, or of all. */
export const listOnOrder = defineRequest({
  name: 'order-sheets.list-on-order',
  input: z.object({ part: partTyped.optional() }),
  output: z.object({ rows: z.array(onOrder) }),
})

/** What a column of a supplier's order file holds. */
export const columnHolds = z.enum([
  'order-number',
  'order-date',
  'account',
  'line',
  'supplier-code',
  'part-number',
  'description',
  'gtin',
  'quantity',
  'pack',
  'unit-price',
  'amount',
  'currency',
  'job',
  'nothing',
])
export type ColumnHolds = z.infer<typeof columnHolds>

/** The columns of an order file for a supplier who wants none of its own. */
export const ourColumns: readonly { readonly heading: string; readonly holds: ColumnHolds }[] = [
  { heading: 'order_number', holds: 'order-number' },
  { heading: 'order_date', holds: 'order-date' },
  { heading: 'account', holds: 'account' },
  { heading: 'line', holds: 'line' },
  { heading: 'supplier_code', holds: 'supplier-code' },
  { heading: 'part_number', holds: 'part-number' },
  { heading: 'description', holds: 'description' },
  { heading: 'quantity', holds: 'quantity' },
  { heading: 'pack', holds: 'pack' },
  { heading: 'unit_price', holds: 'unit-price' },
  { heading: 'amount', holds: 'amount' },
  { heading: 'currency', holds: 'currency' },
]

/** How a supplier wants its orders: under which account of the shop, and the columns, signs and dates of its CSV. */
export const orderingLayout = z
  .object({
    account: z.string().trim().max(60),
    separator: z.enum([',', ';', '\t', '|']),
    decimalSign: z.enum(['.', ',']),
    dateOrder: z.enum(['ymd', 'dmy', 'mdy']),
    columns: z.array(z.object({ heading: z.string().trim().max(100), holds: columnHolds })).max(60),
  })
  .refine(
    ({ columns }) => columns.some(({ holds }) => holds === 'quantity'),
    'no column holds the quantity; an order needs one',
  )
  .refine(
    ({ columns }) => columns.some(({ holds }) => ['supplier-code', 'part-number', 'gtin'].includes(holds)),
    'no column says which part; an order needs the supplier’s number, the part number or the GTIN',
  )
export type OrderingLayout = z.output<typeof orderingLayout>

const detail = (longest: number) => z.string().trim().max(longest).default('')

/** Who orders, as its sheets and files name it. */
export const buyerDetails = z.object({
  name: said(100),
  street: detail(100),
  town: detail(60),
  postcode: detail(20),
  country: z
    .string()
    .trim()
    .regex(/^([A-Z]{2})?$/, 'is no country of ISO 3166: write two capital letters, as GB')
    .default(''),
  telephone: detail(40),
  email: detail(100),
})
export type BuyerDetails = z.output<typeof buyerDetails>

export const readBuyer = defineRequest({
  name: 'order-sheets.read-buyer',
  input: z.object({}),
  /** Until somebody has said who orders, the shop by the name of its first location. */
  output: z.object({ buyer: buyerDetails, isSaved: z.boolean() }),
})

export const saveBuyer = defineRequest({
  name: 'order-sheets.save-buyer',
  input: z.object({ buyer: buyerDetails }),
  output: z.object({ buyer: buyerDetails }),
})

export const readOrdering = defineRequest({
  name: 'order-sheets.read-ordering',
  input: z.object({ supplier: supplierTyped }),
  output: z.object({ ordering: orderingLayout }),
})

/** Remembers how a supplier wants its orders. Sheets that were sent stay as they went. */
export const saveOrdering = defineRequest({
  name: 'order-sheets.save-ordering',
  input: z.object({ supplier: supplierTyped, ordering: orderingLayout }),
  output: z.object({ ordering: orderingLayout }),
})

/**
 * Writes the files of sheets into a folder each: a CSV in the supplier's columns, a UBL 2.1 Order, a page to print and
 * the text of an e-mail. A sheet that was sent is written as it went, byte for byte.
 */
export const exportSheets = defineRequest({
  name: 'order-sheets.export-sheets',
  input: z.object({
    numbers: z.array(sheetNumber).min(1).max(100),
    folder: z.string().trim().min(1).max(1000),
  }),
  output: z.object({
    folder: z.string(),
    /** Whether somebody has said who orders; else the sheets name the shop by its first location. */
    buyerIsNamed: z.boolean(),
    sheets: z.array(
      z.object({
        number: z.string(),
        supplier: z.string(),
        state: sheetState,
        currency: z.string(),
        value: z.string(),
        lines: z.int(),
        files: z.array(z.string()),
      }),
    ),
  }),
})
