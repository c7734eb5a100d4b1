import { expect, test } from 'vitest'
import type { ReadingFacts } from '../../../electron/fault-guide/readings/find-limits.ts'
import { wordExpected } from '../../../electron/fault-guide/word-expected.ts'

const nothingKnown: ReadingFacts = { volts: null, watts: null }

/** `expected` and `tolerance` are those of the guide; the last is what stands on the check sheet. */
test.each<[string, string, string | null, ReadingFacts, string]>([
  ['resistance', '60..90 Ω', null, nothingKnown, '60 Ω to 90 Ω'],
  ['resistance', '3.9 kΩ', '10 %', nothingKnown, '3.51 kΩ to 4.29 kΩ'],
  ['resistance', 'at least 1 MΩ', null, nothingKnown, 'at least 1 MΩ'],
  ['height', '60..100 cm', null, nothingKnown, '60 cm to 100 cm'],
  ['temperature', '-22..-16 °C', null, nothingKnown, '-22 °C to -16 °C'],
  [
    'resistance',
    'heater',
    '10 %',
    { volts: '230', watts: '2200', heaterWatts: '2000' },
    '23.8 Ω to 29.1 Ω; R = U²/P with 230 V and 2000 W',
  ],
  ['resistance', 'heater', '10 %', nothingKnown, 'volts times volts by the watts on the heater, ± 10 %'],
  // 12.09 kΩ at 20 °C and 4.160 kΩ at 50 °C stand in the printed table of this curve (from memory); 60 °C: 3.02 kΩ.
  [
    'resistance',
    'ntc 10 kΩ at 25 °C, beta 3435 K',
    '10 %',
    nothingKnown,
    '28.7 kΩ at 0 °C, 18.4 kΩ at 10 °C, 12.2 kΩ at 20 °C, 8.27 kΩ at 30 °C, 2.98 kΩ at 60 °C, each ± 10 %',
  ],
  [
    'resistance',
    'ntc beta 3977 K',
    '10 %',
    nothingKnown,
    'what its maker states at the temperature that it has, ± 10 %',
  ],
  [
    'changeover',
    'changes over',
    null,
    nothingKnown,
    'closed open / open closed, which is at rest / actuated',
  ],
])('a good %s of %s, %s: %#', (measure, expected, tolerance, facts, worded) =>
  expect(wordExpected({ measure, expected, tolerance }, facts)).toBe(worded),
)

test('a check that measures nothing expects no figure', () =>
  expect(wordExpected({ measure: null, expected: null, tolerance: null }, nothingKnown)).toBeNull())
