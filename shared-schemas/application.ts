import { z } from 'zod'
import { problem } from './problem.ts'
import { defineRequest } from './request.ts'

/** Where the opening of the shop stands. Asked again and again until it is `ready` or has `failed`. */
export const startUp = z.discriminatedUnion('state', [
  z.object({ state: z.literal('opening') }),
  z.object({
    state: z.literal('loading-sample'),
    /** The file being read, and rows done so far of about as many. */
    file: z.string(),
    rowsDone: z.int(),
    rowsExpected: z.int(),
  }),
  z.object({ state: z.literal('ready'), databaseFile: z.string(), sampleShop: z.boolean() }),
  z.object({ state: z.literal('failed'), problem }),
])
export type StartUp = z.infer<typeof startUp>

export const readStartUp = defineRequest({
  name: 'application.read-start-up',
  input: z.object({}),
  output: startUp,
})
