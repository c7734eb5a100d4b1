import { z } from 'zod'
import { countOrUnknown, dateOrUnknown, oneOf, word, wordOrUnknown } from '../loading/cells.ts'
import { checkRanges } from '../loading/ranges.ts'
import { checkOneSubject } from '../loading/subject.ts'

/** A row of fitments.csv. */
export const fitmentRow = z
  .object({
    says: oneOf('includes', 'excludes'),
    family: wordOrUnknown,
    part_number: wordOrUnknown,
    brand: word,
    model_number: word,
    made_from: dateOrUnknown,
    made_to: dateOrUnknown,
    serial_from: wordOrUnknown,
    serial_to: wordOrUnknown,
    position: wordOrUnknown,
    quantity: countOrUnknown(1),
    source: word,
  })
  .superRefine(checkOneSubject)
  .superRefine(checkRanges)

export type FitmentRow = z.output<typeof fitmentRow>
