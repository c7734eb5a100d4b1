import { z } from 'zod'
import { defineRequest } from './request.ts'

/** Demand is added up by weeks or by months, each ending on the day asked about. */
export const bucket = z.enum(['week', 'month'])
export type Bucket = z.infer<typeof bucket>

/** By interval and variation of the demands; `none` where nothing was ever asked for. */
export const demandClass = z.enum(['smooth', 'intermittent', 'erratic', 'lumpy', 'none'])

/** By the value of what is used in a year, the dearest first: A up to 80 % of all, B up to 95 %, C the rest; null without price or use. */
export const valueClass = z.enum(['A', 'B', 'C'])
export type ValueClass = z.infer<typeof valueClass>

/**
 * `new`: first asked for in the last quarter of a year; `dead`: asked for, but not within two years; `replaced`: its
 * history and its stock count for the number that took its place; `unused`: never asked for.
 */
export const partLife = z.enum(['new', 'current', 'dead', 'replaced', 'unused'])
export type PartLife = z.infer<typeof partLife>

/** Where the days of the lead time are from. */
export const leadTimeFrom = z.enum(['given', 'deliveries', 'supplier', 'assumed'])

/** How much of a part should be there and on its way, and why. */
export const stockLevel = z.object({
  partNumber: z.string(),
  family: z.string(),
  demandClass,
  valueClass: valueClass.nullable(),
  life: partLife,
  /** The number that stands for this one today; null where it is its own. */
  replacedBy: z.string().nullable(),
  /** Pieces expected to be asked for in a bucket, and their standard deviation over one. */
  meanPerBucket: z.number(),
  deviationPerBucket: z.number(),
  /** A review orders when on hand and on order together are at this or below it. */
  reorderPoint: z.int(),
  /** And orders up to this. */
  orderUpTo: z.int(),
  /** Pieces that are ordered together: a pack, or what is economical. */
  lot: z.int(),
  /** Share of the pieces asked for that all parts together should give at once, and what this part is expected to give. */
  targetFillRate: z.number(),
  expectedFillRate: z.number(),
  /** Probability that nothing is short between two deliveries. On a slow part it is high without any stock. */
  cycleService: z.number(),
  leadDays: z.number(),
  leadDaysDeviation: z.number(),
  leadTimeFrom,
})
export type StockLevel = z.infer<typeof stockLevel>

/** What the parts of a family sell together, and what would do if one stock served them all. */
export const familyLevel = z.object({
  family: z.string(),
  parts: z.int(),
  demandClass,
  meanPerBucket: z.number(),
  orderUpTo: z.int(),
})
export type FamilyLevel = z.infer<typeof familyLevel>

/**
 * The levels of every part, from what was used up to a day. `fillRate` is of all parts together: a piece is kept where
 * it is most likely to be asked for.
 */
export const listLevels = defineRequest({
  name: 'reorder.list-levels',
  input: z.object({
    /** Today, unless given. */
    asOf: z.iso.date().optional(),
    fillRate: z.number().min(0.5).max(0.999).optional(),
    /** Weeks, unless given or all of the usage is dated by months. */
    bucket: bucket.optional(),
    /** In place of every supplier's own. */
    leadDays: z.int().min(0).max(730).optional(),
    reviewDays: z.int().min(1).max(366).optional(),
  }),
  output: z.object({
    asOf: z.string(),
    bucket,
    targetFillRate: z.number(),
    expectedFillRate: z.number(),
    reviewDays: z.int(),
    rows: z.array(stockLevel),
    families: z.array(familyLevel),
  }),
})
export type StockLevels = z.infer<typeof listLevels.output>
