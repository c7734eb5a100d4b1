import { z } from 'zod'

/** Which stretch of a long list is wanted. */
export const stretchAsked = {
  /** Each of these words must stand somewhere in a row; separators and case do not count. */
  words: z.string().trim().max(120).default(''),
  /** So many of those that are left are passed over. */
  from: z.int().min(0).default(0),
  /** At most so many are told; left out, all, and of every model there is the first 20,000. */
  most: z.int().min(1).max(20_000).optional(),
}

/** Of models, words are looked for in the number, the brand and the type. A list may hold every model of a large catalogue. */
export const modelsAsked = stretchAsked

export const listedModel = z.object({
  brand: z.string(),
  modelNumber: z.string(),
  applianceType: z.string(),
  /** What must hold besides, in words: `made 2014-06 on`, `serial 4000 to 4999`, `left`. Empty: nothing. */
  conditions: z.array(z.string()),
})
export type ListedModel = z.infer<typeof listedModel>

export const modelPage = z.object({
  /** How many there are in all, and how many of them the words leave. */
  count: z.int(),
  matching: z.int(),
  /** In the order of the list, how many of those that are left each brand has. */
  brands: z.array(z.object({ brand: z.string(), models: z.int() })),
  models: z.array(listedModel),
})
export type ModelPage = z.infer<typeof modelPage>
