import { z } from 'zod'

/** One row that a load wrote, in words, with what it said before and says then, column by column. */
export const rowChange = z.object({
  table: z.string(),
  change: z.enum(['added', 'changed', 'removed']),
  row: z.string(),
  columns: z.array(z.object({ column: z.string(), before: z.string(), after: z.string() })),
})
export type RowChange = z.infer<typeof rowChange>
