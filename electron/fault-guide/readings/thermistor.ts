const kelvinAt0 = 273.15
const kelvinAt25 = kelvinAt0 + 25

export interface Thermistor {
  /** Above 0. */
  readonly ohmsAt25: number
  /** Between 25 °C and a second temperature, mostly 85 °C; above 0. */
  readonly betaKelvin: number
}

/** Ohms of an NTC thermistor at a temperature in °C by the beta equation, R = R₂₅ exp(B (1/T - 1/T₂₅)), T in kelvin. */
export function thermistorOhms({ ohmsAt25, betaKelvin }: Thermistor, celsius: number): number {
  const kelvin = celsius + kelvinAt0
  if (!(kelvin > 0)) throw new Error(`a temperature lies above absolute zero, not at ${celsius} °C`)
  return ohmsAt25 * Math.exp(betaKelvin * (1 / kelvin - 1 / kelvinAt25))
}

/** The temperature in °C at which it has so many ohms: the same equation turned round. */
export function thermistorCelsius({ ohmsAt25, betaKelvin }: Thermistor, ohms: number): number {
  if (!(ohms > 0)) throw new Error(`a thermistor has more than 0 Ω, not ${ohms}`)
  return 1 / (1 / kelvinAt25 + Math.log(ohms / ohmsAt25) / betaKelvin) - kelvinAt0
}
