import { z } from 'zod'
import { causeEnd, faultCheck, faultSymptom } from './fault-guide.ts'
import { caution } from './fit-check.ts'
import { licensedHazard } from './hazards.ts'
import { initials } from './initials.ts'
import { applianceQuestion } from './plate-reading.ts'
import { defineRequest } from './request.ts'

const words = z.string().trim().min(1).max(200)

/** What a check showed: one of its outcomes, a reading as typed with its unit, or nothing. */
export const checkAnswer = z.union([
  z.object({ check: words, outcome: words }),
  z.object({ check: words, measured: words }),
  z.object({ check: words, left: z.enum(['skipped', 'could-not-tell']) }),
])
export type CheckAnswer = z.infer<typeof checkAnswer>

/** One fault being looked for: the appliance as far as it is known, the symptom, and what was seen so far. */
export const faultQuestion = z.object({
  applianceType: words,
  symptom: words,
  appliance: applianceQuestion.optional(),
  /** In the order in which they were given; one a check. */
  answers: z.array(checkAnswer).max(60).default([]),
})
export type FaultQuestion = z.infer<typeof faultQuestion>

const probability = z.number().min(0).max(1)
const family = z.object({ family: z.string(), name: z.string(), safetyDevice: z.boolean() })

/** How one cause came by its figure: the shares it began with, then the factor of each answer. */
export const causeArithmetic = z.object({
  byGuide: probability,
  /** Finished jobs of the shop that speak for it; a fraction where a job leaves several causes open. */
  jobsOfType: z.number(),
  byType: probability,
  jobsOfPlatform: z.number(),
  prior: probability,
  factors: z.array(z.object({ check: z.string(), outcome: z.string(), likelihood: probability })),
  /** The prior times all factors. */
  product: z.number(),
  /** The products of all causes together; the probability is the product divided by it. */
  total: z.number(),
})
export type CauseArithmetic = z.infer<typeof causeArithmetic>

export const weighedCause = z.object({
  cause: z.string(),
  endsIn: causeEnd,
  probability,
  arithmetic: causeArithmetic,
})
export type WeighedCause = z.infer<typeof weighedCause>

/** What puts one or more of the causes right. */
export const remedy = z.object({
  remedy: z.string(),
  endsIn: causeEnd,
  licensedFor: licensedHazard.nullable(),
  probability,
  /** The likeliest first. */
  causes: z.array(z.string()),
  families: z.array(family),
  /** What to try before a part is ordered, or to tell the customer. Empty for licensed work. */
  advice: z.array(z.string()),
})
export type Remedy = z.infer<typeof remedy>

/** A check as it is put to a person. */
export const describedCheck = faultCheck.omit({ otherwise: true, byCause: true, tolerance: true }).extend({
  /** Minutes with what its hazards and the competence that it needs add, and what that is for. */
  effort: z.number(),
  added: z.array(z.object({ why: z.string(), minutes: z.number() })),
  cautions: z.array(caution),
})
export type DescribedCheck = z.infer<typeof describedCheck>

/** A check that may still tell something: by how many bits it is expected to lower the doubt. */
export const offeredCheck = describedCheck.extend({ bits: z.number() })
export type OfferedCheck = z.infer<typeof offeredCheck>

export const readAnswer = z.object({
  asked: describedCheck,
  /** Null: skipped, or it could not be told. */
  outcome: z.string().nullable(),
  /** What was typed, and what it was judged by. */
  measured: z.object({ typed: z.string(), why: z.string() }).nullable(),
  left: z.enum(['skipped', 'could-not-tell']).nullable(),
  /** Where nothing that the other answers leave explains it: how probable it is at best. */
  oddAtBest: probability.nullable(),
})
export type ReadAnswer = z.infer<typeof readAnswer>

export const weighedFaults = z.object({
  applianceType: z.string(),
  symptom: z.string(),
  /** Of the models left open, where they share one. */
  platform: z.string().nullable(),
  /** Finished jobs of the shop that bent the guide's weights. */
  jobs: z.object({ ofType: z.int(), ofPlatform: z.int() }),
  /** All causes, the likeliest first. */
  causes: z.array(weighedCause),
  remedies: z.array(remedy),
  end: z.enum(['not-yet', 'settled', 'cannot-tell']),
  /** How many of the remedies, from the first, are worth acting on; 0 unless it is settled. */
  settledOn: z.int(),
  /** The best to ask next first. */
  checks: z.array(offeredCheck),
  answers: z.array(readAnswer),
})
export type WeighedFaults = z.infer<typeof weighedFaults>

/** Symptoms that the guide knows, as they are listed, each with other words for it. */
export const listSymptoms = defineRequest({
  name: 'fault-guide.list-symptoms',
  input: z.object({ applianceType: words.optional() }),
  output: z.object({ symptoms: z.array(faultSymptom) }),
})

/** What is likely wrong after what was seen, what to check next, and what is worth ordering. */
export const weighFaults = defineRequest({
  name: 'fault-guide.weigh-faults',
  input: faultQuestion,
  output: weighedFaults,
})

/** Keeps what the guide proposes for a job, so that it can be held against what was wrong in the end. */
export const keepFinding = defineRequest({
  name: 'fault-guide.keep-finding',
  input: faultQuestion.extend({ job: words, initials: initials.optional() }),
  output: z.object({ findingId: z.string() }),
})

/** What finished jobs with one symptom teach. */
export const lesson = z.object({
  applianceType: z.string(),
  symptom: z.string(),
  /** Jobs that ended with the appliance working. */
  jobs: z.int(),
  secondVisits: z.int(),
  /** Jobs for which a family was thought to be needed, and other parts or none of it were fitted. */
  wrongOrders: z.int(),
  /** Jobs for which it is known what was fitted, of which the wrong orders are a part. */
  told: z.int(),
  /** Jobs for which the guide's proposal was kept and can be held against what was wrong. */
  proposals: z.int(),
  firstRight: z.int(),
})
export type Lesson = z.infer<typeof lesson>

/** Which symptoms lead to wrong orders, the worst first, and how often the guide's first proposal was right. */
export const readLessons = defineRequest({
  name: 'fault-guide.read-lessons',
  input: z.object({ applianceType: words.optional() }),
  output: z.object({ lessons: z.array(lesson), notInGuide: z.int() }),
})
