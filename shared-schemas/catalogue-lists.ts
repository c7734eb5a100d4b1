import { z } from 'zod'
import { familyCode } from './identifiers.ts'
import { modelPage, modelsAsked, stretchAsked } from './model-list.ts'
import { defineRequest } from './request.ts'

export const listedFamily = z.object({
  family: familyCode,
  name: z.string(),
  function: z.string(),
  applianceTypes: z.array(z.string()),
  safetyDevice: z.boolean(),
  parts: z.int(),
})
export type ListedFamily = z.infer<typeof listedFamily>

/** The part families of the catalogue, or a stretch of them, by what they do and then by name. */
export const listFamilies = defineRequest({
  name: 'catalogue.list-families',
  input: z.object(stretchAsked),
  output: z.object({ count: z.int(), matching: z.int(), families: z.array(listedFamily) }),
})

/** One family with its parts: genuine before pattern, then by number. */
export const readFamily = defineRequest({
  name: 'catalogue.read-family',
  input: z.object({ family: familyCode }),
  output: listedFamily.omit({ parts: true }).extend({
    hazards: z.array(z.string()),
    parts: z.array(
      z.object({
        partNumber: z.string(),
        kind: z.enum(['genuine', 'pattern']),
        maker: z.string(),
        description: z.string(),
      }),
    ),
  }),
})
export type FamilyRead = z.infer<typeof readFamily.output>

/**
 * The models of the catalogue, or a stretch of them, by brand and number; of a family, those for which it or one of its
 * parts is listed by any source. To be listed is no verdict: conditions and exclusions are for the fit check.
 */
export const listModels = defineRequest({
  name: 'catalogue.list-models',
  input: z.object({ family: familyCode.optional(), ...modelsAsked }),
  output: modelPage,
})
