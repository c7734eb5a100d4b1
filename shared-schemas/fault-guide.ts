import { z } from 'zod'
import { hazard, licensedHazard } from './hazards.ts'
import { defineRequest } from './request.ts'

/** Who may make a check: anyone over the telephone, a repairer on a dead machine, or one trained and equipped to measure live. */
export const competence = z.enum(['anyone', 'repairer', 'live-testing'])
export type Competence = z.output<typeof competence>

/** Where a cause leads: to a part, to a mend without one, to nothing since it is as it should be, or to a licensed person. */
export const causeEnd = z.enum(['part', 'no-part', 'normal', 'licensed'])
export type CauseEnd = z.output<typeof causeEnd>

/** What a customer complains of, of one appliance type. */
export const faultSymptom = z.object({
  applianceType: z.string(),
  symptom: z.string(),
  /** Other words for it. */
  alsoSaid: z.array(z.string()),
})
export type FaultSymptom = z.output<typeof faultSymptom>

export const faultCause = z.object({
  cause: z.string(),
  endsIn: causeEnd,
  licensedFor: licensedHazard.nullable(),
  /** The families of the part; the fit check tells which of them a model takes. */
  families: z.array(z.object({ family: z.string(), name: z.string(), safetyDevice: z.boolean() })),
  /** How often it is the cause, beside the others of the symptom; above 0. */
  weight: z.number(),
  /** What to try first, or to tell the customer. Empty where a licence is needed. */
  advice: z.string(),
  source: z.string().nullable(),
})
export type FaultCause = z.output<typeof faultCause>

/** How likely each outcome is, in the order of the check's outcomes; each within (0, 1), together 1. */
const likelihoods = z.array(z.number())

export const faultCheck = z.object({
  check: z.string(),
  /** What to do, and what to look for. */
  how: z.string(),
  /** What is measured; null where a person looks or asks. */
  measure: z.string().nullable(),
  unit: z.string().nullable(),
  /** What a good one reads, as the guide writes it. */
  expected: z.string().nullable(),
  tolerance: z.string().nullable(),
  minutes: z.number(),
  tools: z.array(z.string()),
  hazards: z.array(hazard),
  competence,
  source: z.string().nullable(),
  outcomes: z.array(z.string()),
  /** Where the cause lies elsewhere. */
  otherwise: likelihoods,
  /** Under the causes of which it tells more. */
  byCause: z.array(z.object({ cause: z.string(), likelihoods })),
})
export type FaultCheck = z.output<typeof faultCheck>

/** What belongs to taking a part out, putting it in and trying it; common practice. */
export const fittingNote = z.object({
  stage: z.enum(['before', 'fitting', 'test']),
  note: z.string(),
  source: z.string().nullable(),
})
export type FittingNote = z.output<typeof fittingNote>

/** What to mind of parts of these families: taking out, fitting, testing. A family that only licensed people work on has none. */
export const listFittingNotes = defineRequest({
  name: 'fault-guide.list-fitting-notes',
  input: z.object({ families: z.array(z.string().trim().min(1).max(200)).max(200) }),
  output: z.object({
    families: z.array(
      z.object({
        family: z.string(),
        name: z.string(),
        safetyDevice: z.boolean(),
        licensedFor: licensedHazard.nullable(),
        notes: z.array(fittingNote),
      }),
    ),
  }),
})
