import { z } from 'zod'

/** A number of pieces, never a fraction. */
export const quantity = z.int()
export const positiveQuantity = z.int().positive().max(1_000_000)

/** Money as an exact decimal string such as `12.50`; the currency stands beside it. */
export const decimal = z
  .string()
  .regex(/^\d+(\.\d{1,4})?$/, 'a price is digits, perhaps a point and up to four more')
