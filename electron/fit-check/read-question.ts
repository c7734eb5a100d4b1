import type { PlateReadings } from '../../shared-schemas/plate-reading.ts'
import { daysOf } from './made-dates.ts'
import type { Readings } from './suppose-appliances.ts'

/** What was read besides the model, as the rules take it. */
export function asReadings({ made, serial, volts, hertz, watts, measured = {} }: PlateReadings): Readings {
  const stated = Object.entries({ volts, hertz, watts, ...measured }).filter(
    ([, value]) => value !== undefined,
  )
  return {
    made: made === undefined ? null : daysOf(made),
    serial: serial ?? null,
    stated: new Map(stated as [string, string][]),
  }
}
