import { z } from 'zod'
import { defineRequest } from './request.ts'

/** The book: on hand by location and part, summed from the movements. */
export const listOnHand = defineRequest({
  name: 'stock-ledger.list-on-hand',
  input: z.object({
    location: z.string().trim().min(1).max(40).optional(),
    part: z.string().trim().min(1).max(60).optional(),
  }),
  output: z.object({
    rows: z.array(
      z.object({
        location: z.string(),
        partNumber: z.string(),
        quantity: z.int(),
        reserved: z.int(),
        bin: z.string().nullable(),
      }),
    ),
  }),
})
