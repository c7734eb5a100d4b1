import { z } from 'zod'
import { initials } from './initials.ts'
import { defineRequest } from './request.ts'

const countId = z.string().trim().length(36)
const partTyped = z.string().trim().min(1).max(60)
const pieces = z.int().min(0).max(999_999)

/** Why counted and book differ, as far as it is known. */
export const explanationKind = z.enum([
  'swap',
  'replaced-number',
  'job-line',
  'transfer',
  'pack',
  'digits',
  'loss',
  'find',
])
export type ExplanationKind = z.infer<typeof explanationKind>

export const explanation = z.object({
  kind: explanationKind,
  /** The other part, the job, the movement or the words that go with it. */
  detail: z.string(),
  text: z.string(),
})
export type Explanation = z.infer<typeof explanation>

/** One part of a count: its last reading, and the book at the moment of that. */
export const countLine = z.object({
  partNumber: z.string(),
  family: z.string(),
  description: z.string(),
  bin: z.string().nullable(),
  /** Null while the count is blind and nothing was read, or where the book has it and nobody has counted it yet. */
  book: z.int().nullable(),
  counted: z.int().nullable(),
  variance: z.int().nullable(),
  readAt: z.string().nullable(),
  readings: z.int(),
  /** Outside the tolerance of its value class, and read only once. */
  toRecount: z.boolean(),
  isWithin: z.boolean(),
  /** What staff settled it as. */
  settled: explanation.nullable(),
  proposed: z.array(explanation),
})
export type CountLine = z.infer<typeof countLine>

export const stockCount = z.object({
  countId,
  location: z.string(),
  begunAt: z.string(),
  initials: z.string(),
  postedAt: z.string().nullable(),
  lines: z.array(countLine),
  /** Share of the counted lines that are within tolerance, without netting; null while nothing is counted. */
  recordAccuracy: z.number().min(0).max(1).nullable(),
})
export type StockCount = z.infer<typeof stockCount>

/** Begins the count of one location, or goes on with the one that is open there. */
export const beginCount = defineRequest({
  name: 'van-counts.begin-count',
  input: z.object({ location: z.string().trim().min(1).max(40), initials: initials.optional() }),
  output: z.object({ countId, isNew: z.boolean() }),
})

/** One part was counted: its number of pieces, or so many more of it as they are scanned one by one. */
export const recordReading = defineRequest({
  name: 'van-counts.record-reading',
  input: z.object({
    countId,
    part: partTyped,
    pieces,
    /** `add` puts them to what was read of this part before. */
    how: z.enum(['whole', 'add']).default('whole'),
    initials: initials.optional(),
  }),
  output: z.object({ partNumber: z.string(), counted: z.int(), readingId: z.string() }),
})

/** Takes the last reading of a part back, as after a wrong scan. What was read of it before counts again. */
export const withdrawReading = defineRequest({
  name: 'van-counts.withdraw-reading',
  input: z.object({ countId, readingId: z.string().trim().length(36), initials: initials.optional() }),
  /** `counted` is null where the part was not read before. */
  output: z.object({ partNumber: z.string(), counted: z.int().nullable() }),
})

/** The count as it stands: blind while it is going on, with the book, the variances and what may explain them once it is compared. */
export const readCount = defineRequest({
  name: 'van-counts.read-count',
  input: z.object({ countId, compare: z.boolean().default(false) }),
  output: stockCount,
})

/** Says what a variance is. */
export const explainVariance = defineRequest({
  name: 'van-counts.explain-variance',
  input: z.object({
    countId,
    part: partTyped,
    kind: explanationKind,
    detail: z.string().trim().max(200).default(''),
    initials: initials.optional(),
  }),
  output: z.object({ partNumber: z.string() }),
})

/** Books the variances, all in one transaction: after it the book is what was counted, and what was moved since. */
export const postCount = defineRequest({
  name: 'van-counts.post-count',
  input: z.object({ countId, initials: initials.optional() }),
  output: z.object({
    movements: z.int(),
    recordAccuracy: z.number(),
    valueGained: z.string(),
    valueLost: z.string(),
  }),
})

/** Counts of one location or of all, the latest first: accuracy and value of variances, and why. */
export const listCounts = defineRequest({
  name: 'van-counts.list-counts',
  input: z.object({ location: z.string().trim().min(1).max(40).optional() }),
  output: z.object({
    counts: z.array(
      z.object({
        countId,
        location: z.string(),
        begunAt: z.string(),
        postedAt: z.string().nullable(),
        initials: z.string(),
        lines: z.int(),
        recordAccuracy: z.number().nullable(),
        valueGained: z.string().nullable(),
        valueLost: z.string().nullable(),
        reasons: z.array(z.object({ kind: explanationKind, lines: z.int() })),
      }),
    ),
  }),
})

const vanTyped = z.string().trim().min(1).max(40)

export const topUpLine = z.object({
  partNumber: z.string(),
  quantity: z.int(),
  /** The shop location to take it from, and the bin there. */
  from: z.string(),
  bin: z.string().nullable(),
  /** The line of the van's list: a family or a part. */
  wanted: z.string(),
  /** It goes in place of the part on the list. */
  instead: z.boolean(),
})

/** What brings a van back to its list, what the shop cannot give, and what does not belong in the van. */
export const readTopUp = defineRequest({
  name: 'van-counts.read-top-up',
  input: z.object({ van: vanTyped, prefer: z.enum(['genuine', 'pattern']).default('genuine') }),
  output: z.object({
    van: z.string(),
    lines: z.array(topUpLine),
    shortages: z.array(z.object({ wanted: z.string(), level: z.int(), has: z.int(), missing: z.int() })),
    /** In the van beyond its list, or not on it at all: to be brought back. */
    leftovers: z.array(z.object({ partNumber: z.string(), quantity: z.int() })),
    /** In other vans beyond their lists, for what is short. */
    spares: z.array(
      z.object({ wanted: z.string(), partNumber: z.string(), van: z.string(), quantity: z.int() }),
    ),
  }),
})
export type TopUp = z.infer<typeof readTopUp.output>

/** What the vans are short of and the shop cannot give, all of them taken together: what has to be bought for them. */
export const listShortages = defineRequest({
  name: 'van-counts.list-shortages',
  input: z.object({ prefer: z.enum(['genuine', 'pattern']).default('genuine') }),
  output: z.object({
    shortages: z.array(
      z.object({
        van: z.string(),
        /** A line of a van's list names a family or a part; the other is null. */
        family: z.string().nullable(),
        partNumber: z.string().nullable(),
        missing: z.int(),
      }),
    ),
  }),
})

/** Books what was put into a van, or brought back from it, all of it in one transaction. */
export const recordTopUp = defineRequest({
  name: 'van-counts.record-top-up',
  input: z.object({
    van: vanTyped,
    lines: z
      .array(
        z.object({
          part: partTyped,
          quantity: z.int().min(1).max(999_999),
          /** Where it was taken from, a shelf or another van; or brought back to. */
          location: vanTyped,
          way: z.enum(['into-van', 'back']).default('into-van'),
        }),
      )
      .min(1)
      .max(1_000),
    initials: initials.optional(),
  }),
  output: z.object({ movements: z.int() }),
})
