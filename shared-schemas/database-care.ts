import { z } from 'zod'
import { defineRequest } from './request.ts'

/** Checks the whole file: SQLite's own check, references, and the ledger's laws. */
export const verifyDatabase = defineRequest({
  name: 'database.verify',
  input: z.object({}),
  output: z.object({
    ok: z.boolean(),
    checks: z.array(z.object({ name: z.string(), ok: z.boolean(), detail: z.string() })),
  }),
})

/** A consistent copy into a new file, checked before it is called done. */
export const backUpDatabase = defineRequest({
  name: 'database.back-up',
  input: z.object({ file: z.string().min(1) }),
  output: z.object({ file: z.string(), bytes: z.int() }),
})
