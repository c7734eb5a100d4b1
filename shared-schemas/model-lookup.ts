import { z } from 'zod'
import { modelId } from './identifiers.ts'
import { plateText } from './plate-reading.ts'
import { defineRequest } from './request.ts'

/** How much the text decided: one model has this key, one is clearly best, several agree, or none does. */
export const lookupOutcome = z.enum(['exact', 'near', 'several', 'none'])
export type LookupOutcome = z.infer<typeof lookupOutcome>

/** One place where the text and the catalogue differ. `at` counts from 1 over the catalogue's key; an empty side means that nothing stood there. */
export const characterDifference = z.object({ at: z.int(), typed: z.string(), catalogue: z.string() })
export type CharacterDifference = z.infer<typeof characterDifference>

export const modelCandidate = z.object({
  modelId,
  brand: z.string(),
  modelNumber: z.string(),
  /** The model number's key: NFKC, upper case, separators dropped. Positions count over it. */
  key: z.string(),
  applianceType: z.string(),
  salesNames: z.array(z.string()),
  madeFrom: z.string().nullable(),
  madeTo: z.string().nullable(),
  /** 0 to 1; 1 is the very key. */
  score: z.number().min(0).max(1),
  /** Which of the two printed numbers the text agreed with. */
  matched: z.enum(['model-number', 'sales-name']),
  differences: z.array(characterDifference),
})
export type ModelCandidate = z.infer<typeof modelCandidate>

/** From what was read off a rating plate to the models that it may mean, best first. Never replaces what was typed. */
export const findModels = defineRequest({
  name: 'model-lookup.find-models',
  input: z.object({
    text: plateText,
    brand: z.string().trim().min(1).max(60).optional(),
    applianceType: z.string().trim().min(1).max(40).optional(),
    top: z.int().min(1).max(200).default(10),
  }),
  output: z.object({
    typed: z.string(),
    /** The key that was looked up, after label words and brand names were set aside. */
    key: z.string(),
    outcome: lookupOutcome,
    /** How many models the text leaves open: those that agree with it, not only the ones listed. */
    openModels: z.int(),
    /** Words taken as labels, brands, ratings or other numbers, as they stood in the text. */
    setAside: z.array(
      z.object({ word: z.string(), as: z.enum(['label', 'brand', 'rating', 'other-number']) }),
    ),
    candidates: z.array(modelCandidate),
  }),
})
export type FoundModels = z.infer<typeof findModels.output>
