import { z } from 'zod'
import { orderFlag } from './order-check.ts'
import { decimal } from './quantities.ts'
import { defineRequest } from './request.ts'
import { bucket, stockLevel } from './stock-levels.ts'

/** What there is of a part, what is promised of it and what is coming, all in pieces. */
export const linePosition = z.object({
  /** In the shop, quarantine not counted. */
  onShelf: z.int(),
  /** In vans whose list does not ask for it: it can be brought back. */
  vanSpare: z.int(),
  /** What vans lack to their lists. */
  vanShort: z.int(),
  /** Kept for jobs and customers. */
  reserved: z.int(),
  /** Of order sheets that were sent, and of those that are drafted or checked and not sent yet. */
  onOrder: z.int(),
  onSheets: z.int(),
  /** All of it together: what the reorder point is compared with. */
  available: z.int(),
})
export type LinePosition = z.infer<typeof linePosition>

/** Pieces that are here already and can be used instead of buying. */
export const insteadOfBuying = z.object({
  partNumber: z.string(),
  kind: z.enum(['genuine', 'pattern']),
  quantity: z.int(),
  /** Whether nobody has asked for that part for two years. */
  isDead: z.boolean(),
})
export type InsteadOfBuying = z.infer<typeof insteadOfBuying>

/** The levels of the part, as `reorder.list-levels` gives them. */
const lineLevel = stockLevel.omit({ partNumber: true, family: true, replacedBy: true, targetFillRate: true })

export const proposedLine = z.object({
  partNumber: z.string(),
  description: z.string(),
  quantity: z.int(),
  /** What brings the stock up to its level; the quantity is that in packs, or more for a lower price. */
  need: z.int(),
  unitPrice: z.string(),
  amount: z.string(),
  supplierCode: z.string().nullable(),
  pack: z.int(),
  position: linePosition,
  level: lineLevel,
  /** Interchangeable stock that made the need smaller. */
  instead: z.array(insteadOfBuying),
  /** Expected pieces short until a later order could arrive, if nothing were ordered now. */
  shortWithout: z.number(),
  /** Who else offers it, at what price for this quantity. */
  elsewhere: z.array(z.object({ supplier: z.string(), unitPrice: z.string(), currency: z.string() })),
  flags: z.array(orderFlag),
})
export type ProposedLine = z.infer<typeof proposedLine>

/** What a supplier asks besides the price of the goods. */
export const supplierTerms = z.object({
  minimumOrder: z.string().nullable(),
  carriage: z.string().nullable(),
  carriagePaidFrom: z.string().nullable(),
})

export const proposedOrder = z.object({
  supplier: z.string(),
  name: z.string(),
  currency: z.string(),
  terms: supplierTerms,
  lines: z.array(proposedLine),
  /** Exact decimals: the goods, the carriage on them, and both. */
  goods: z.string(),
  carriage: z.string(),
  total: z.string(),
})
export type ProposedOrder = z.infer<typeof proposedOrder>

/** Why a part that runs low, or of which there is too much, is not ordered. */
export const leftOutWhy = z.enum([
  'no-offer',
  'budget',
  'minimum-order',
  'not-worth-it',
  'on-order',
  'covered',
  'dead',
])
export type LeftOutWhy = z.infer<typeof leftOutWhy>

export const leftOut = z.object({
  partNumber: z.string(),
  description: z.string(),
  why: leftOutWhy,
  /** Pieces that would have been ordered, or of a dead part what lies there. */
  pieces: z.int(),
  text: z.string(),
})
export type LeftOut = z.infer<typeof leftOut>

/** What to bring from a van to the shop before anything is bought. */
export const proposedMove = z.object({
  partNumber: z.string(),
  description: z.string(),
  quantity: z.int(),
  from: z.string(),
})

export const proof = z.object({
  currency: z.string(),
  kind: z.enum(['exact', 'bounded']),
  gap: z.string(),
  gapShare: z.number(),
})

/** What to order this week, from whom and why. Nothing is kept of it: it is made anew from the book each time. */
export const makeProposal = defineRequest({
  name: 'proposal.make-proposal',
  input: z.object({
    /** The levels are those of this day; the stock is today's. */
    asOf: z.iso.date().optional(),
    fillRate: z.number().min(0.5).max(0.999).optional(),
  }),
  output: z.object({
    asOf: z.string(),
    bucket,
    targetFillRate: z.number(),
    expectedFillRate: z.number(),
    reviewDays: z.int(),
    orders: z.array(proposedOrder),
    moves: z.array(proposedMove),
    leftOut: z.array(leftOut),
    proofs: z.array(proof),
    /** Parts that were looked at, and those of them that have enough. */
    parts: z.int(),
    enough: z.int(),
  }),
})
export type Proposal = z.infer<typeof makeProposal.output>

/** How the level of a part comes about, by weeks or months: for a chart and its table. */
export const explainPart = defineRequest({
  name: 'proposal.explain-part',
  input: z.object({
    part: z.string().trim().min(1).max(60),
    /** What is to be ordered now. */
    quantity: z.int().min(0).max(999_999),
    asOf: z.iso.date().optional(),
    fillRate: z.number().min(0.5).max(0.999).optional(),
  }),
  output: z.object({
    partNumber: z.string(),
    bucket,
    /** Pieces asked for in each of the last weeks or months, the earliest first; null is out of stock, and not known. */
    history: z.array(z.object({ from: z.string(), pieces: z.int().nullable() })),
    meanPerBucket: z.number(),
    reorderPoint: z.int(),
    orderUpTo: z.int(),
    /** Stock at the end of each coming week or month, if as much is asked for as is expected. */
    projected: z.array(z.object({ to: z.string(), without: z.number(), with: z.number() })),
  }),
})
export type PartExplained = z.infer<typeof explainPart.output>

const wantedLine = z.object({
  part: z.string().trim().min(1).max(60),
  quantity: z.int().min(1).max(999_999),
})

/** What one supplier's order comes to with these quantities, and what the order check says of it. */
export const weighOrder = defineRequest({
  name: 'proposal.weigh-order',
  input: z.object({
    supplier: z.string().trim().min(1).max(40),
    lines: z.array(wantedLine).max(10_000),
  }),
  output: z.object({
    goods: z.string(),
    carriage: z.string(),
    total: z.string(),
    /** What is missing to the minimum order, and to where carriage is free; null where nothing is or there is no such. */
    toMinimum: z.string().nullable(),
    toCarriagePaid: z.string().nullable(),
    stops: z.int(),
    lines: z.array(
      z.object({
        partNumber: z.string(),
        quantity: z.int(),
        unitPrice: z.string(),
        amount: z.string(),
        pack: z.int(),
        /** One pack more: the pieces then, and by how much the total changes, carriage counted; below 0 it costs less. */
        oneMore: z.object({ quantity: z.int(), change: z.string() }),
        flags: z.array(orderFlag),
      }),
    ),
  }),
})
export type WeighedOrder = z.infer<typeof weighOrder.output>

/** How the shop builds its orders. */
export const buildingSettings = z.object({
  /** The most that a week's orders may cost, in the currency of most suppliers; null is no limit. */
  budget: decimal.nullable(),
  /** Whether pattern parts that lie here are used up before a genuine one is bought for stock. */
  usesPatternStock: z.boolean(),
})
export type BuildingSettings = z.infer<typeof buildingSettings>

export const readSettings = defineRequest({
  name: 'proposal.read-settings',
  input: z.object({}),
  output: buildingSettings,
})

export const changeSettings = defineRequest({
  name: 'proposal.change-settings',
  input: buildingSettings.partial(),
  output: buildingSettings,
})

/** Has a part ordered from this supplier wherever it offers it; without one, from whoever is best. */
export const preferSupplier = defineRequest({
  name: 'proposal.prefer-supplier',
  input: z.object({
    part: z.string().trim().min(1).max(60),
    supplier: z.string().trim().min(1).max(40).nullable(),
  }),
  output: z.object({ partNumber: z.string(), supplier: z.string().nullable() }),
})
