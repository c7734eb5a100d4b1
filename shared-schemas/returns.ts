import { z } from 'zod'
import { initials } from './initials.ts'
import { plateText } from './plate-reading.ts'
import { defineRequest } from './request.ts'

const partTyped = z.string().trim().min(1).max(60)
const placeTyped = z.string().trim().min(1).max(40)
const inWords = z.string().trim().min(1).max(400)
const pieces = z.int().min(1).max(9_999)

/** Why a part came back: unused, it did not fit, it is faulty, it is the old unit given in exchange, or it goes to the supplier off our shelf. */
export const returnKind = z.enum(['unused', 'wrong-fit', 'faulty', 'exchange', 'for-supplier'])
export type ReturnKind = z.infer<typeof returnKind>

export const decisionWay = z.enum(['to-shelf', 'to-supplier', 'scrap'])
export type DecisionWay = z.infer<typeof decisionWay>

export const decision = z.object({
  way: decisionWay,
  quantity: z.int(),
  to: z.string(),
  reason: z.string(),
  reference: z.string().nullable(),
  decidedAt: z.string(),
  initials: z.string(),
  movementId: z.string(),
})

/** A part that came back, and what was decided about it. */
export const partReturn = z.object({
  returnId: z.string(),
  kind: returnKind,
  partNumber: z.string(),
  description: z.string(),
  quantity: z.int(),
  /** Pieces that nothing was decided about. */
  undecided: z.int(),
  from: z.string(),
  /** The customer or job that it came from, as far as there is one. */
  reference: z.string().nullable(),
  quarantine: z.string(),
  reason: z.string(),
  returnedAt: z.string(),
  initials: z.string(),
  /** For a wrong fit: the record that puts a caution on later verdicts. */
  fitRecordId: z.string().nullable(),
  /** What brought it into quarantine. */
  movementId: z.string(),
  decisions: z.array(decision),
})
export type PartReturn = z.infer<typeof partReturn>

/**
 * Takes a part back into quarantine. From a job or a customer it needs their reference; for the supplier it comes off a
 * shelf or out of a van. A wrong fit names the appliance, and puts a caution on every later `fits`.
 */
export const takeReturn = defineRequest({
  name: 'returns.take-return',
  input: z.object({
    kind: returnKind,
    part: partTyped,
    quantity: pieces.default(1),
    /** `customer`, `job`, or the location that it lies in. */
    from: placeTyped,
    reference: z.string().trim().min(1).max(60).optional(),
    reason: inWords,
    /** Without it, the first quarantine there is. */
    quarantine: placeTyped.optional(),
    /** For a wrong fit: the appliance that it did not fit, by its full number. */
    model: plateText.optional(),
    brand: z.string().trim().min(1).max(60).optional(),
    initials,
  }),
  output: partReturn,
})

/** Decides about pieces in quarantine: back to a shelf, to the supplier, or scrap. One movement with its reason. */
export const decideReturn = defineRequest({
  name: 'returns.decide-return',
  input: z.object({
    returnId: z.string().trim().length(36),
    way: decisionWay,
    /** Without it, all that is undecided. */
    quantity: pieces.optional(),
    /** For `to-shelf`: where to. */
    to: placeTyped.optional(),
    reason: inWords,
    /** The number under which the supplier takes it back. */
    reference: z.string().trim().min(1).max(60).optional(),
    initials,
  }),
  output: partReturn,
})

/** Returns, the latest first. */
export const listReturns = defineRequest({
  name: 'returns.list-returns',
  input: z.object({
    state: z.enum(['undecided', 'all']).default('undecided'),
    most: z.int().min(1).max(500).default(100),
  }),
  output: z.object({ returns: z.array(partReturn), more: z.boolean() }),
})
