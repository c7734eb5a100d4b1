/**
 * The key under which a model number, part number or brand is stored and compared: NFKC, upper case, and only
 * letters and digits kept, since makers, shops and keyboards disagree about every separator.
 */
export function normaliseNumber(printed: string): string {
  return printed
    .normalize('NFKC')
    .toUpperCase()
    .replace(/[^\p{L}\p{N}]/gu, '')
}
