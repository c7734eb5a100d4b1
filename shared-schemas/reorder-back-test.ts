import { z } from 'zod'
import { defineRequest } from './request.ts'
import { bucket } from './stock-levels.ts'

/** What came of one way to reorder, had it been followed through the time that was played. */
export const playedSetting = z.object({
  /** What was aimed at; null for levels that have no aim. */
  targetFillRate: z.number().nullable(),
  /** Share of the pieces asked for that were there at once. */
  fillRate: z.number(),
  /** On hand at the end of a week or month, on average. */
  stockPieces: z.number(),
  /** The same at today's prices, as far as there are any. */
  stockValue: z.string(),
  orders: z.int(),
  piecesOrdered: z.int(),
})
export type PlayedSetting = z.infer<typeof playedSetting>

/** A level that is kept today by another rule: at the minimum or below it, the part is ordered up to the maximum. */
export const presentLevel = z.object({
  part: z.string().trim().min(1).max(60),
  minimum: z.int().min(0).max(999_999),
  maximum: z.int().min(0).max(999_999),
})

/**
 * What this setting, and others beside it, would have done over the last year: played through week by week or month by
 * month, with levels made of nothing but what was known then. Prices, lead times and lots are those of today.
 */
export const playLastYear = defineRequest({
  name: 'reorder.play-last-year',
  input: z.object({
    asOf: z.iso.date().optional(),
    fillRate: z.number().min(0.5).max(0.999).optional(),
    bucket: bucket.optional(),
    leadDays: z.int().min(0).max(730).optional(),
    reviewDays: z.int().min(1).max(366).optional(),
    /** The shop's present minimum and maximum; without them, what the vans' lists and the shelves' limits say. */
    present: z.array(presentLevel).max(100_000).optional(),
  }),
  output: z.object({
    asOf: z.string(),
    bucket,
    /** Weeks or months played; 0 where the history is too short to play any. */
    buckets: z.int(),
    /** Parts that were played, of so many that were ever asked for: every so many of a large shop. */
    parts: z.int(),
    ofParts: z.int(),
    currency: z.string().nullable(),
    setting: playedSetting.nullable(),
    /** From the least stock to the most: what more of it gives. */
    curve: z.array(playedSetting),
    /** On the parts that have a present level; null where none has one. */
    present: z
      .object({
        from: z.enum(['given', 'lists']),
        parts: z.int(),
        theirs: playedSetting,
        ours: playedSetting,
      })
      .nullable(),
  }),
})
export type PlayedYear = z.infer<typeof playLastYear.output>
