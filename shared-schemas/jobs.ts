import { z } from 'zod'
import { caution, verdict } from './fit-check.ts'
import { initials } from './initials.ts'
import { lookupOutcome } from './model-lookup.ts'
import { plateReadings, plateText } from './plate-reading.ts'
import { defineRequest } from './request.ts'
import { movement, reservation } from './stock-ledger.ts'

const jobTyped = z
  .string()
  .trim()
  .regex(/^\S{1,40}$/u, 'a job number is up to forty characters without a space')
const placeTyped = z.string().trim().min(1).max(40)
const partTyped = z.string().trim().min(1).max(60)
const inWords = z.string().trim().min(1).max(400)
const pieces = z.int().min(1).max(9_999)

/** How a job stands: open, or ended with the appliance working or not. */
export const jobState = z.enum(['open', 'finished', 'given-up'])
export type JobState = z.infer<typeof jobState>

/** Why a visit did not finish a job, in the trade's words (common practice). `job-words.ts` of the screen writes them out. */
export const whyNot = z.enum([
  'wrong-part',
  'part-not-carried',
  'part-on-order',
  'no-access',
  'customer-away',
  'further-fault',
  'second-person-needed',
  'not-licensed',
  'declined',
  'beyond-repair',
  'no-fault-found',
  'other',
])
export type WhyNot = z.infer<typeof whyNot>

/** What is known of a job before anybody works on it. The model may be half read; of the customer only a reference is kept. */
const jobFacts = plateReadings.omit({ measured: true }).extend({
  date: z.iso.date().optional(),
  van: placeTyped.optional(),
  model: plateText.default(''),
  brand: z.string().trim().min(1).max(60).optional(),
  customer: z.string().trim().min(1).max(60).optional(),
  symptom: z.string().trim().max(400).default(''),
})

/** A family or a part that the job needs. */
export const jobNeed = z.object({
  family: z.string(),
  familyName: z.string(),
  /** Null where any part of the family that fits will do. */
  partNumber: z.string().nullable(),
  quantity: z.int(),
  /** Whether so many pieces are with the job or fitted already. */
  isMet: z.boolean(),
})
export type JobNeed = z.infer<typeof jobNeed>

/** A part that is kept for the job, was taken for it, fitted or brought back. */
export const jobPart = z.object({
  partNumber: z.string(),
  family: z.string(),
  description: z.string(),
  /** On the plate as it was read; null while no model was read. */
  verdict: verdict.nullable(),
  cautions: z.array(caution),
  kept: z.int(),
  taken: z.int(),
  broughtBack: z.int(),
  fitted: z.int(),
  /** Taken, and neither fitted nor brought back. Below 0: fitted, and never booked as taken. */
  inHand: z.int(),
  /** Where the last of it was taken from, which is where it goes back to. */
  takenFrom: z.string().nullable(),
})
export type JobPart = z.infer<typeof jobPart>

export const jobVisit = z.object({
  outcome: z.enum(['finished', 'not-finished', 'given-up', 'reopened']),
  why: whyNot.nullable(),
  note: z.string().nullable(),
  causeKey: z.string().nullable(),
  cause: z.string().nullable(),
  recordedAt: z.string(),
  initials: z.string(),
})
export type JobVisit = z.infer<typeof jobVisit>

/** What the number on the plate leaves open. */
const jobModels = z.object({
  outcome: lookupOutcome,
  open: z.int(),
  /** The one model, where the number was read as it is printed. */
  settled: z.object({ brand: z.string(), modelNumber: z.string(), applianceType: z.string() }).nullable(),
  first: z.array(z.string()),
})

export const job = jobFacts.extend({
  job: z.string(),
  date: z.string(),
  state: jobState,
  /** Null where no model was read, or too little of it to look up. */
  models: jobModels.nullable(),
  needs: z.array(jobNeed),
  parts: z.array(jobPart),
  reservations: z.array(reservation),
  visits: z.array(jobVisit),
  /** Null while it is open. */
  finishedFirstVisit: z.boolean().nullable(),
  /** Machines that each opened a job under this number; more than one is a conflict. */
  openedOn: z.array(z.string()),
})
export type Job = z.infer<typeof job>

/** Opens a job. Without a number of the shop's own it is given one that no other machine gives. */
export const openJob = defineRequest({
  name: 'jobs.open-job',
  input: jobFacts.extend({ job: jobTyped.optional(), initials: initials.optional() }),
  output: job,
})

/** Writes the facts of a job anew: what is left out is no longer known. What was written before stays in the book. */
export const changeJob = defineRequest({
  name: 'jobs.change-job',
  input: jobFacts.extend({ job: jobTyped, initials: initials.optional() }),
  output: job,
})

export const readJob = defineRequest({
  name: 'jobs.read-job',
  input: z.object({ job: jobTyped }),
  output: job,
})

export const listedJob = z.object({
  job: z.string(),
  date: z.string(),
  van: z.string().nullable(),
  brand: z.string().nullable(),
  model: z.string(),
  symptom: z.string(),
  customer: z.string().nullable(),
  state: jobState,
  finishedFirstVisit: z.boolean().nullable(),
  /** Pieces that were taken for it, and neither fitted nor brought back. */
  inHand: z.int(),
})
export type ListedJob = z.infer<typeof listedJob>

/** Jobs, the latest first. */
export const listJobs = defineRequest({
  name: 'jobs.list-jobs',
  input: z.object({
    state: z.enum(['open', 'ended', 'all']).default('open'),
    van: placeTyped.optional(),
    /** Part of the number, the model, the symptom or the customer's reference. */
    text: z.string().trim().max(60).default(''),
    most: z.int().min(1).max(500).default(100),
  }),
  output: z.object({ jobs: z.array(listedJob), more: z.boolean() }),
})

/** Says that the job needs so many of a part, or of any part of a family; 0 takes it off the list. */
export const needPart = defineRequest({
  name: 'jobs.need-part',
  input: z.object({
    job: jobTyped,
    part: partTyped.optional(),
    family: z.string().trim().min(1).max(60).optional(),
    quantity: z.int().min(0).max(9_999).default(1),
    initials: initials.optional(),
  }),
  output: job,
})

/** Takes pieces for the job out of a van or off a shelf. */
export const takePart = defineRequest({
  name: 'jobs.take-part',
  input: z.object({
    job: jobTyped,
    part: partTyped,
    quantity: pieces.default(1),
    /** Without it, the job's van. */
    from: placeTyped.optional(),
    usedBeforeBooked: z.boolean().default(false),
    takeReserved: z.boolean().default(false),
    initials: initials.optional(),
  }),
  output: z.object({ movement, job }),
})

/** Brings pieces that were not fitted back to a van or a shelf. */
export const bringBack = defineRequest({
  name: 'jobs.bring-back',
  input: z.object({
    job: jobTyped,
    part: partTyped,
    quantity: pieces.default(1),
    /** Without it, where the last of it was taken from. */
    to: placeTyped.optional(),
    initials: initials.optional(),
  }),
  output: z.object({ movement, job }),
})

/** Says that pieces which were taken for the job are in the appliance; below 0 takes that back. */
export const markFitted = defineRequest({
  name: 'jobs.mark-fitted',
  input: z.object({
    job: jobTyped,
    part: partTyped,
    quantity: z
      .int()
      .min(-9_999)
      .max(9_999)
      .refine(quantity => quantity !== 0, 'how many: one at least')
      .default(1),
    initials: initials.optional(),
  }),
  output: job,
})

/**
 * Ends a visit. One that ends the job frees what is still kept for it, needs every piece to be fitted or brought back,
 * and records each fitted part as confirmed for the model.
 */
export const endVisit = defineRequest({
  name: 'jobs.end-visit',
  input: z.object({
    job: jobTyped,
    outcome: z.enum(['finished', 'not-finished', 'given-up']),
    /** Needed unless it is finished. */
    why: whyNot.optional(),
    note: inWords.optional(),
    /** What was wrong: the fault guide's key, or words. */
    causeKey: z.string().trim().min(1).max(80).optional(),
    cause: inWords.optional(),
    /** What goes back, and where to. */
    back: z
      .array(z.object({ part: partTyped, quantity: pieces, to: placeTyped }))
      .max(200)
      .default([]),
    initials,
  }),
  output: z.object({
    job,
    released: z.int(),
    /** Parts that are recorded as fitted and confirmed in the model; and those that are not, since the model is not settled. */
    confirmed: z.array(z.string()),
    notConfirmed: z.array(z.string()),
  }),
})

/** Opens a job again that was ended by mistake. */
export const reopenJob = defineRequest({
  name: 'jobs.reopen-job',
  input: z.object({ job: jobTyped, initials: initials.optional() }),
  output: job,
})

/** What ended jobs teach: the appliance, the symptom, what was thought to be needed, what was fitted, and what was wrong. */
export const listFinishedJobs = defineRequest({
  name: 'jobs.list-finished-jobs',
  input: z.object({}),
  output: z.object({
    jobs: z.array(
      z.object({
        job: z.string(),
        date: z.string(),
        brand: z.string().nullable(),
        /** Null where the model is not settled. */
        modelNumber: z.string().nullable(),
        platform: z.string().nullable(),
        applianceType: z.string().nullable(),
        symptom: z.string(),
        causeKey: z.string().nullable(),
        cause: z.string().nullable(),
        familiesNeeded: z.array(z.string()),
        familiesFitted: z.array(z.string()),
        finishedFirstVisit: z.boolean(),
      }),
    ),
  }),
})
