import { describe, expect, test } from 'vitest'
import { heaterOhms } from '../../../../electron/fault-guide/readings/heater-resistance.ts'
import { thermistorCelsius, thermistorOhms } from '../../../../electron/fault-guide/readings/thermistor.ts'

// R = U²/P: Joule's law with Ohm's, in any book of electrical engineering. The figures are worked by hand.
test.each([
  { volts: 230, watts: 2000, ohms: 26.45 },
  { volts: 230, watts: 1800, ohms: 29.39 },
  { volts: 240, watts: 2400, ohms: 24 },
  { volts: 120, watts: 1440, ohms: 10 },
])('a heater of $watts W at $volts V has $ohms Ω', ({ volts, watts, ohms }) => {
  expect(heaterOhms({ watts, volts })).toBeCloseTo(ohms, 2)
})

describe('an NTC thermistor', () => {
  const common = { ohmsAt25: 10_000, betaKelvin: 3435 }

  // IEC 60539-1 defines B = T₁T₂/(T₂ - T₁) · ln(R₁/R₂), the temperatures in kelvin; from memory.
  test.each([2700, 3435, 3977, 4300])('with B = %d K has that B between 25 °C and 85 °C', betaKelvin => {
    const [kelvin25, kelvin85] = [298.15, 358.15]
    const ratio =
      thermistorOhms({ ohmsAt25: 1, betaKelvin }, 25) / thermistorOhms({ ohmsAt25: 1, betaKelvin }, 85)
    expect(((kelvin25 * kelvin85) / (kelvin85 - kelvin25)) * Math.log(ratio)).toBeCloseTo(betaKelvin, 6)
  })

  /**
   * The resistance table that is printed for the common curve of 10 kΩ at 25 °C with B 3435 K between 25 and 85 °C, from
   * memory. The beta equation is exact at 25 and 85 °C and known to stray by some five in a hundred 25 °C below.
   */
  test.each([
    [0, 27_280, 0.06],
    [10, 17_960, 0.04],
    [25, 10_000, 0.0001],
    [50, 4160, 0.02],
    [60, 3020, 0.02],
    [85, 1451, 0.001],
  ])('at %d °C has the %d Ω of the printed table', (celsius, printed, share) => {
    const ohms = thermistorOhms(common, celsius)
    expect(Math.abs(ohms - printed) / printed).toBeLessThan(share)
  })

  test.each([-20, 0, 25, 60, 99])('at %d °C tells its temperature back', celsius => {
    expect(thermistorCelsius(common, thermistorOhms(common, celsius))).toBeCloseTo(celsius, 9)
  })

  test('falls as it warms', () => {
    const ohms = [0, 20, 40, 60, 80].map(celsius => thermistorOhms(common, celsius))
    expect(ohms).toEqual([...ohms].sort((one, other) => other - one))
  })
})
