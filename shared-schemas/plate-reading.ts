import { z } from 'zod'

/** `2014`, `2014-06` or `2014-06-17`: as much of a date as the plate gave. */
export const partialDate = z
  .string()
  .regex(/^(19|20)\d\d(-(0[1-9]|1[0-2])(-(0[1-9]|[12]\d|3[01]))?)?$/, 'a date is 2014, 2014-06 or 2014-06-17')

/** What the plate says besides the model number. Everything may be missing. Volts and hertz are as printed: `230`, `220-240`, `115/230`. */
export const plateReadings = z.object({
  made: partialDate.optional(),
  serial: z.string().trim().min(1).max(40).optional(),
  volts: z.string().trim().min(1).max(20).optional(),
  hertz: z.string().trim().min(1).max(20).optional(),
  watts: z.string().trim().min(1).max(20).optional(),
  /** What was measured or read on the old part, by the name of the family's attribute: `thread` is `G 3/4`. */
  measured: z.record(z.string().trim().min(1).max(60), z.string().trim().min(1).max(60)).optional(),
})
export type PlateReadings = z.infer<typeof plateReadings>

/** The model text as typed or read; `?` stands for one character that cannot be read. */
export const plateText = z.string().max(400)

/** Which appliance a question is about: what was read of its model number, with the brand if known. */
export const applianceQuestion = plateReadings.extend({
  model: plateText,
  brand: z.string().trim().min(1).max(60).optional(),
})
export type ApplianceQuestion = z.infer<typeof applianceQuestion>
