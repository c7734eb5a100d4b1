import type { AskedReading, Verdict } from '../../shared-schemas/fit-check.ts'
import type { AskedFor } from './decide-fit.ts'

/** One asked reading with its sentence: what to read, and what its values mean where they are few. */
export function wordAsked({ reading, positions, means }: AskedFor): AskedReading {
  return {
    reading,
    ...(positions.length > 0 ? { positions: [...positions] } : {}),
    means: means.map(meaning => ({ ...meaning })),
    text: `${whatToRead(reading, positions)}${means.length > mostValues ? '' : `: ${wordMeans(means)}`}.`,
  }
}

const mostValues = 12

/** Values that mean the same are said together: `A fits; B or C does not fit`. */
function wordMeans(means: AskedFor['means']): string {
  const byVerdict = Map.groupBy(means, ({ verdict }) => verdict)
  return [...byVerdict]
    .map(([verdict, same]) => `${same.map(({ value }) => value).join(' or ')} ${verdictWords[verdict]}`)
    .join('; ')
}

const verdictWords: Readonly<Record<Verdict, string>> = {
  fits: 'fits',
  'fits-with-changes': 'fits with changes',
  ask: 'leaves it open',
  'does-not-fit': 'does not fit',
  'no-record': 'is not on record',
}

function whatToRead(reading: string, positions: readonly number[]): string {
  switch (reading) {
    case 'model-number':
      if (positions.length === 0) return 'Compare the model number with the plate'
      return positions.length === 1
        ? `Read character ${positions[0]} of the model number`
        : `Read characters ${listWords(positions)} of the model number`
    case 'made':
      return 'Read the date of making'
    case 'serial':
      return 'Read the serial number'
    case 'brand':
      return 'Read the brand'
    case 'volts':
    case 'hertz':
    case 'watts':
      return `Read the ${reading} on the plate`
    default:
      return `Measure or read the ${reading} on the old part`
  }
}

function listWords(positions: readonly number[]): string {
  return `${positions.slice(0, -1).join(', ')} and ${positions.at(-1)}`
}
