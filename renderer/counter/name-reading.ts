import type { AskedReading } from '../../shared-schemas/fit-check.ts'

/** A reading by name, to stand inside a sentence. */
export function nameReading({ reading, positions = [] }: AskedReading): string {
  switch (reading) {
    case 'model-number':
      return positions.length === 1
        ? `character ${positions[0]} of the model number`
        : `characters ${listWords(positions.map(String))} of the model number`
    case 'made':
      return 'the date of making'
    case 'serial':
      return 'the serial number'
    case 'brand':
      return 'the brand'
    case 'volts':
    case 'hertz':
    case 'watts':
      return `the ${reading} on the plate`
    default:
      return `the ${reading} on the old part`
  }
}

export function listWords(words: readonly string[]): string {
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`
}
