import { z } from 'zod'
import { initials } from './initials.ts'
import { defineRequest } from './request.ts'
import { money } from './stock-ledger.ts'

/** What holds for every part until something else is said. */
export const reorderSettings = z.object({
  /** Share of the pieces asked for that all parts together should give at once. */
  fillRate: z.number().min(0.5).max(0.999),
  reviewDays: z.int().min(1).max(366),
  /** For a supplier that states no lead time and has not delivered yet. */
  leadDays: z.int().min(0).max(730),
  /** What one line of an order costs to write, receive and put away; null orders what is needed and no more. */
  lineCost: money.nullable(),
  /** What keeping a piece for a year costs, as a share of its price. */
  holdingRate: z.number().gt(0).max(5),
})
export type ReorderSettings = z.infer<typeof reorderSettings>

export const readReorderSettings = defineRequest({
  name: 'reorder.read-settings',
  input: z.object({}),
  output: reorderSettings,
})

/** Changes what is named and leaves the rest. */
export const changeReorderSettings = defineRequest({
  name: 'reorder.change-settings',
  input: reorderSettings.partial(),
  output: reorderSettings,
})

const partTyped = z.string().trim().min(1).max(60)

/** Says how many pieces of a part its shelf holds; null is any number. */
export const setShelfLimit = defineRequest({
  name: 'reorder.set-shelf-limit',
  input: z.object({ part: partTyped, pieces: z.int().min(0).max(999_999).nullable() }),
  output: z.object({ partNumber: z.string(), pieces: z.int().nullable() }),
})

/** What a day's jobs and customers took of a part; below 0 what they brought back. */
export const partUse = z.object({
  date: z.string(),
  /** The job or the customer; empty where nobody said. */
  reference: z.string(),
  quantity: z.int(),
  isOneOff: z.boolean(),
})
export type PartUse = z.infer<typeof partUse>

/** What the shop has said of a part, and what was asked for under its number in the last year, the latest first. */
export const readPart = defineRequest({
  name: 'reorder.read-part',
  input: z.object({ part: partTyped }),
  output: z.object({
    partNumber: z.string(),
    /** Pieces that its shelf holds; null is any number. */
    shelfLimit: z.int().nullable(),
    preferredSupplier: z.string().nullable(),
    uses: z.array(partUse),
    /** How many more there were in that year, before these. */
    earlierUses: z.int(),
  }),
})
export type PartKnown = z.infer<typeof readPart.output>

/** Says that what a job or a customer took will not be asked for again, or after all that it may be. */
export const markOneOff = defineRequest({
  name: 'reorder.mark-one-off',
  input: z.object({
    /** The reference of the movements, or the job of imported usage. */
    reference: z.string().trim().min(1).max(60),
    isOneOff: z.boolean().default(true),
    initials: initials.optional(),
  }),
  output: z.object({
    reference: z.string(),
    isOneOff: z.boolean(),
    /** Pieces that are read as no demand for that. */
    pieces: z.int(),
  }),
})
