import { z } from 'zod'

/** What can hurt a person who works on a part or makes a check. */
export const hazard = z.enum([
  'mains',
  'stored-charge',
  'gas',
  'sealed-refrigerant',
  'microwave-hv',
  'fixed-wiring',
  'water',
  'hot',
  'sharp',
  'moving',
])
export type Hazard = z.output<typeof hazard>

/** Work for a person licensed or certified for it alone: the program never gives steps of it. */
export const licensedHazard = hazard.extract(['gas', 'sealed-refrigerant', 'microwave-hv', 'fixed-wiring'])
export type LicensedHazard = z.output<typeof licensedHazard>
