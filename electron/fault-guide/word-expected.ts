import type { FaultCheck } from '../../shared-schemas/fault-guide.ts'
import { type ExpectedReading, measures, measureUnits, readExpected } from '../catalogue/expected-reading.ts'
import { findLimits, type ReadingFacts } from './readings/find-limits.ts'
import { wordFigure, wordLimits } from './readings/word-figure.ts'

/** What a good one reads, in figures for this appliance as far as it is known; null where nothing is measured. */
export function wordExpected(
  { measure, expected, tolerance }: Pick<FaultCheck, 'measure' | 'expected' | 'tolerance'>,
  facts: ReadingFacts,
): string | null {
  const known = measures.find(one => one === measure)
  if (known === undefined || expected === null) return null
  const read = readExpected(known, expected, tolerance)
  if (!read.ok) throw new Error(`a check was loaded that expects “${expected}”, which cannot be read`)
  return word(read.expected, { unit: measureUnits[known], either: tolerance ?? '', facts })
}

function word(
  expected: ExpectedReading,
  { unit, either, facts }: { readonly unit: string; readonly either: string; readonly facts: ReadingFacts },
): string {
  switch (expected.kind) {
    case 'changeover':
      return 'closed open / open closed, which is at rest / actuated'
    case 'ntc':
      return wordTable(expected, either, facts)
    case 'heater':
    case 'limits': {
      const limits = findLimits(expected, { celsius: null, watts: null }, facts)
      if (!limits.ok) return `volts times volts by the watts on the heater, ± ${either}`
      return [wordLimits(limits, unit), limits.from].filter(text => text !== null).join('; ')
    }
  }
}

/** Where a sensor is met: a cold room, a room, warm water. */
const temperatures = [0, 10, 20, 30, 60]

function wordTable(
  expected: Extract<ExpectedReading, { kind: 'ntc' }>,
  either: string,
  facts: ReadingFacts,
): string {
  const figures = temperatures.flatMap(celsius => {
    const limits = findLimits(expected, { celsius, watts: null }, facts)
    return limits.ok ? [`${wordFigure((limits.low + limits.high) / 2, 'Ω')} at ${celsius} °C`] : []
  })
  return figures.length === 0
    ? `what its maker states at the temperature that it has, ± ${either}`
    : `${figures.join(', ')}, each ± ${either}`
}
