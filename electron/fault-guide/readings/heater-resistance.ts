/**
 * Ohms of a heater that takes so many watts at so many volts: Joule's and Ohm's laws, R = U²/P. Both above 0. Cold and hot
 * differ little in the alloys of heaters, so that a cold reading is judged by it; common practice.
 */
export function heaterOhms({ watts, volts }: { readonly watts: number; readonly volts: number }): number {
  if (!(watts > 0 && volts > 0)) throw new Error(`a heater takes power above 0, not ${watts} W at ${volts} V`)
  return volts ** 2 / watts
}
