import type { z } from 'zod'

/** A row speaks of a family or of one part, never of both or neither. */
export function checkOneSubject(
  { family, part_number }: { readonly family: string | null; readonly part_number: string | null },
  context: z.RefinementCtx,
): void {
  if ((family === null) !== (part_number === null)) return
  const message =
    family === null
      ? 'is empty, and so is part_number: name the family or the part'
      : 'and part_number are both given: keep the one that is meant'
  context.addIssue({ code: 'custom', path: ['family'], message })
}
