import { z } from 'zod'
import { reason, verdict } from './fit-check.ts'
import { modelId } from './identifiers.ts'
import { initials } from './initials.ts'
import { applianceQuestion, plateText } from './plate-reading.ts'
import { defineRequest } from './request.ts'

const partTyped = z.string().trim().min(1).max(60)
const inWords = z.string().trim().min(1).max(400)

/** The one appliance model and part that something is recorded of. The number must be the model's own, not near it. */
const modelAndPart = z.object({
  model: plateText,
  brand: z.string().trim().min(1).max(60).optional(),
  part: partTyped,
})

/** Records that a part was fitted and confirmed on a job, or came back because it did not fit. */
export const recordFit = defineRequest({
  name: 'fit-check.record-fit',
  input: z.discriminatedUnion('kind', [
    modelAndPart.extend({ kind: z.literal('confirmed'), job: z.string().trim().min(1).max(40), initials }),
    modelAndPart.extend({
      kind: z.literal('wrong-fit'),
      job: z.string().trim().min(1).max(40).optional(),
      reason: inWords,
      initials,
    }),
  ]),
  output: z.object({ recordId: z.string() }),
})

/** Settles a wrong-fit return, so that its caution is no longer shown: how it was found out, and by whom. */
export const settleWrongFit = defineRequest({
  name: 'fit-check.settle-wrong-fit',
  input: z.object({ recordId: z.string().trim().min(1).max(40), how: inWords, initials }),
  output: z.object({ recordId: z.string() }),
})

/** Corrects the catalogue: this part must not be used in this model. No later load takes it back. */
export const addExclusion = defineRequest({
  name: 'fit-check.add-exclusion',
  input: modelAndPart.extend({
    /** Only there, where a part may go into several places. */
    position: z.string().trim().min(1).max(60).optional(),
    reason: inWords,
    initials,
  }),
  output: z.object({ source: z.string(), isNew: z.boolean() }),
})

/** Takes back a correction made in the shop, by a further row: who made it and why, and who took it back, is all kept. */
export const withdrawCorrection = defineRequest({
  name: 'fit-check.withdraw-correction',
  input: modelAndPart.extend({
    /** As the verdict names it: `shop correction, AB 2026-11-23`. */
    source: z.string().trim().min(1).max(60),
    reason: inWords,
    initials,
  }),
  output: z.object({ source: z.string() }),
})

/** The source of whatever these initials correct on that day. */
export function nameCorrection(initials: string, day: string): string {
  return `${correctionPrefix}${initials} ${day}`
}

/** Whether a source is a correction made in the shop, which the shop may take back. */
export function isCorrection(source: string): boolean {
  return source.startsWith(correctionPrefix)
}

const correctionPrefix = 'shop correction, '

/** One thing that happened to a verdict. Of what was said before the shop kept dates, `at` is null. */
export const verdictEvent = z.object({
  at: z.string().nullable(),
  kind: z.enum(['said', 'withdrawn', 'confirmed', 'wrong-fit', 'settled']),
  text: z.string(),
  source: z.string(),
  /** For a wrong fit that waits to be settled, and for what settled one. */
  recordId: z.string().optional(),
})
export type VerdictEvent = z.infer<typeof verdictEvent>

/** What was said of a model and a part, and recorded of them, in order of time; and the verdict of a day, if one is named. */
export const readHistory = defineRequest({
  name: 'fit-check.read-history',
  input: applianceQuestion.extend({ part: partTyped, asOf: z.iso.date().optional() }),
  output: z.object({
    model: z.object({ modelId, brand: z.string(), modelNumber: z.string() }),
    partNumber: z.string(),
    events: z.array(verdictEvent),
    /** By the statements of the end of that day; attributes and supersessions are those of today. */
    asOf: z.object({ date: z.string(), verdict, reasons: z.array(reason) }).nullable(),
  }),
})
