import { z } from 'zod'

/** Who stands by what was recorded. */
export const initials = z
  .string()
  .trim()
  .regex(/^\p{L}{1,6}$/u, 'initials are one to six letters')
