import { z } from 'zod'
import { initials } from './initials.ts'
import { defineRequest } from './request.ts'

const locationTyped = z.string().trim().min(1).max(40)
const partTyped = z.string().trim().min(1).max(60)
const inWords = z.string().trim().min(1).max(400)
const referenceTyped = z.string().trim().min(1).max(60)
/** An exact decimal of the shop's currency; never a binary fraction. */
export const money = z.string().regex(/^\d{1,9}(\.\d{1,6})?$/, 'is no amount: write digits, as 12.50')
const pieces = z.int().min(1).max(999_999)

/** The places outside the shop that parts come from and go to. */
export const outsidePlace = z.enum(['supplier', 'customer', 'job', 'scrap', 'count', 'opening'])
export type OutsidePlace = z.infer<typeof outsidePlace>

/** One line of the ledger, as people read it. */
export const movement = z.object({
  movementId: z.string(),
  recordedAt: z.string(),
  device: z.string(),
  initials: z.string(),
  partNumber: z.string(),
  quantity: z.int(),
  kind: z.enum(['receipt', 'issue', 'transfer', 'return', 'adjustment']),
  /** A location of the shop, or a place outside. */
  from: z.string(),
  to: z.string(),
  reason: z.string(),
  reference: z.string().nullable(),
  unitCost: z.string().nullable(),
  usedBeforeBooked: z.boolean(),
  reverses: z.string().nullable(),
  reversedBy: z.string().nullable(),
})
export type Movement = z.infer<typeof movement>

/** Records that a quantity of a part went from one place to another; acknowledged means that it is on the disk. */
export const recordMovement = defineRequest({
  name: 'stock-ledger.record-movement',
  input: z.object({
    part: partTyped,
    quantity: pieces,
    /** A location, or `supplier`, `customer`, `job`, `scrap`. */
    from: locationTyped,
    to: locationTyped,
    reason: inWords,
    initials: initials.optional(),
    /** The job, order sheet or count that it belongs to; a job or a customer must be named. */
    reference: referenceTyped.optional(),
    unitCost: money.optional(),
    /** The part was in hand though the book does not have it: the book may go below zero, and says so. */
    usedBeforeBooked: z.boolean().default(false),
    /** Takes what is reserved for somebody else. */
    takeReserved: z.boolean().default(false),
  }),
  output: z.object({ movement }),
})

/** Takes a movement back by a further one the other way. The first stays in the book. */
export const reverseMovement = defineRequest({
  name: 'stock-ledger.reverse-movement',
  input: z.object({
    movementId: z.string().trim().min(1).max(40),
    reason: inWords,
    initials: initials.optional(),
  }),
  output: z.object({ movement }),
})

/** The ledger of a part, of a place, or both, the latest first. */
export const listMovements = defineRequest({
  name: 'stock-ledger.list-movements',
  input: z.object({
    part: partTyped.optional(),
    location: locationTyped.optional(),
    /** Only those before this one, for the next page. */
    before: z.string().trim().min(1).max(40).optional(),
    most: z.int().min(1).max(500).default(50),
  }),
  output: z.object({
    /** `balance` is what is in the shop and its vans, or in the one location that was asked for, after the movement; for one part. */
    movements: z.array(movement.extend({ balance: z.int().nullable() })),
    more: z.boolean(),
  }),
})

/** The book: on hand by location and part, summed from the movements. */
export const listOnHand = defineRequest({
  name: 'stock-ledger.list-on-hand',
  input: z.object({
    location: locationTyped.optional(),
    part: partTyped.optional(),
    /** As it was at the end of this day. */
    asOf: z.iso.date().optional(),
  }),
  output: z.object({
    rows: z.array(
      z.object({
        location: z.string(),
        partNumber: z.string(),
        quantity: z.int(),
        reserved: z.int(),
        bin: z.string().nullable(),
      }),
    ),
  }),
})

/** Says in which bin of a location a part lies; empty takes the bin away. */
export const setBin = defineRequest({
  name: 'stock-ledger.set-bin',
  input: z.object({ part: partTyped, location: locationTyped, bin: z.string().trim().max(20) }),
  output: z.object({ bin: z.string().nullable() }),
})

export const reservation = z.object({
  reservationId: z.string(),
  partNumber: z.string(),
  location: z.string(),
  quantity: z.int(),
  heldFor: z.enum(['job', 'customer']),
  reference: z.string(),
  recordedAt: z.string(),
  initials: z.string(),
})
export type Reservation = z.infer<typeof reservation>

/** Keeps a quantity of what is on hand for a job or a customer. */
export const reservePart = defineRequest({
  name: 'stock-ledger.reserve-part',
  input: z.object({
    part: partTyped,
    location: locationTyped,
    quantity: pieces,
    heldFor: z.enum(['job', 'customer']),
    reference: referenceTyped,
    initials: initials.optional(),
  }),
  output: z.object({ reservation }),
})

export const releaseReservation = defineRequest({
  name: 'stock-ledger.release-reservation',
  input: z.object({ reservationId: z.string().trim().min(1).max(40), initials: initials.optional() }),
  output: z.object({ reservation }),
})

/** What is kept for somebody now, the oldest first. */
export const listReservations = defineRequest({
  name: 'stock-ledger.list-reservations',
  input: z.object({
    part: partTyped.optional(),
    location: locationTyped.optional(),
    reference: referenceTyped.optional(),
  }),
  output: z.object({ reservations: z.array(reservation) }),
})

/** What the stock is worth, by what was last paid and by the moving average, in exact decimals. */
export const readStockValue = defineRequest({
  name: 'stock-ledger.read-stock-value',
  input: z.object({ location: locationTyped.optional() }),
  output: z.object({
    pieces: z.int(),
    atLastCost: z.string(),
    atMovingAverage: z.string(),
    /** Pieces of parts for which nothing was ever paid as far as the book knows. */
    piecesWithoutCost: z.int(),
  }),
})

/** What two machines did without having heard of each other, for a person to look at. */
export const ledgerConflict = z.discriminatedUnion('kind', [
  z.object({
    /** `moved-before-count`: the book of the moment it was counted is another one now. `counted-twice`: two counts booked one variance. */
    kind: z.enum(['moved-before-count', 'counted-twice']),
    location: z.string(),
    partNumber: z.string(),
    countedAt: z.string(),
    device: z.string(),
    bookThen: z.int(),
    bookNow: z.int(),
  }),
  z.object({ kind: z.literal('job-number-twice'), job: z.string(), devices: z.array(z.string()) }),
])
export type LedgerConflict = z.infer<typeof ledgerConflict>

/** Conflicts that stand. A conflict of counts is settled by counting the part again, one of jobs by writing the job anew. */
export const listConflicts = defineRequest({
  name: 'stock-ledger.list-conflicts',
  input: z.object({}),
  output: z.object({ conflicts: z.array(ledgerConflict) }),
})

/** Writes the ledger, the counts, the jobs, the returns and the attached codes to a file for another machine of the shop. */
export const exportLedger = defineRequest({
  name: 'stock-ledger.export-ledger',
  input: z.object({ file: z.string().min(1) }),
  output: z.object({
    file: z.string(),
    movements: z.int(),
    reservations: z.int(),
    /** Rows of counts, jobs, returns and codes. */
    records: z.int(),
  }),
})

/** Takes in what another machine recorded: by ids, in any order, as often as one likes; all of it or nothing. */
export const importLedger = defineRequest({
  name: 'stock-ledger.import-ledger',
  input: z.object({ file: z.string().min(1) }),
  output: z.object({
    movements: z.int(),
    alreadyHere: z.int(),
    reservations: z.int(),
    records: z.int(),
    /** Places that are below zero since: a part was used there that the book had moved away, or not yet there. */
    belowZero: z.array(z.object({ location: z.string(), partNumber: z.string(), quantity: z.int() })),
    conflicts: z.array(ledgerConflict),
  }),
})

const codeScanned = z.string().min(1).max(400)

/** What a scanned or typed code stands for here: a part, a location, the label that undoes, or nothing yet. */
export const foundCode = z.discriminatedUnion('kind', [
  z.object({
    kind: z.literal('part'),
    partNumber: z.string(),
    description: z.string(),
    /** How many pieces the code stands for, as it says itself or as it was said when it was attached. */
    pieces: z.int(),
    by: z.enum(['attached', 'gtin', 'number']),
  }),
  z.object({ kind: z.literal('location'), location: z.string(), name: z.string() }),
  z.object({ kind: z.literal('undo') }),
  /** Nothing here has it. `packOf` is a part whose own code differs only as that of a pack does. */
  z.object({ kind: z.literal('unknown'), packOf: z.string().nullable() }),
  z.object({ kind: z.literal('misread'), why: z.enum(['check-digit', 'elements']) }),
])
export type FoundCode = z.infer<typeof foundCode>

/** Resolves a code: what was attached here, a GTIN, a part's own or other number, a location. */
export const findCode = defineRequest({
  name: 'stock-ledger.find-code',
  input: z.object({ code: codeScanned }),
  output: z.object({ found: foundCode }),
})

/** Says which part a code stands for from now on. What the code already stands for is changed only when that is asked for. */
export const attachCode = defineRequest({
  name: 'stock-ledger.attach-code',
  input: z.object({
    code: codeScanned,
    part: partTyped,
    /** A carton's code stands for all that is in it. */
    pieces: pieces.default(1),
    instead: z.boolean().default(false),
    initials: initials.optional(),
  }),
  output: z.object({ partNumber: z.string(), pieces: z.int() }),
})
