import { normaliseNumber } from '../catalogue/normalise-number.ts'

/** The key of a plate's text: as of a number, with `?` kept where one character cannot be read. */
export function plateKey(text: string): string {
  return text.normalize('NFKC').split('?').map(normaliseNumber).join('?')
}

/** How many characters of a key were read. */
export function countReadCharacters(key: string): number {
  return key.length - (key.split('?').length - 1)
}

/** Stands in a text for one character that cannot be read. */
export const unreadable = '?'
