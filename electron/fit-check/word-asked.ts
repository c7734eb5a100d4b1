import type { AskedReading } from '../../shared-schemas/fit-check.ts'
import type { AskedFor } from './decide-fit.ts'

/** One asked reading with its sentence: what to read, and what its values mean where they are few. */
export function wordAsked({ reading, positions, means }: AskedFor): AskedReading {
  const few = means.slice(0, mostValues)
  return {
    reading,
    ...(positions.length > 0 ? { positions: [...positions] } : {}),
    means: means.map(meaning => ({ ...meaning })),
    text: `${whatToRead(reading, positions)}${few.length < means.length ? '' : `: ${few.map(wordMeaning).join('; ')}`}.`,
  }
}

const mostValues = 6

function wordMeaning({ value, verdict }: AskedFor['means'][number]): string {
  return `${value} ${verdictWords[verdict]}`
}

const verdictWords = {
  fits: 'fits',
  'fits-with-changes': 'fits with changes',
  ask: 'leaves it open',
  'does-not-fit': 'does not fit',
  'no-record': 'is not on record',
}

function whatToRead(reading: string, positions: readonly number[]): string {
  switch (reading) {
    case 'model-number':
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
