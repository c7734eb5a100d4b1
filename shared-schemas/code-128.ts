/**
 * The bars and spaces of a text in Code 128, set B, as widths in modules, bars and spaces by turns; undefined for a text
 * with a character that the set does not have. By ISO/IEC 15417.
 */
export function encodeCode128(text: string): readonly number[] | undefined {
  if (!/^[\x20-\x7e]+$/.test(text)) return undefined
  const values = [startB, ...[...text].map(character => character.charCodeAt(0) - 32)]
  return [...values, code128Check(values), stop].flatMap(value => [...patternOf(value)].map(Number))
}

/** The check character: the start's value and each further one times its place, modulo 103. */
export function code128Check(values: readonly number[]): number {
  return values.reduce((sum, value, place) => sum + value * Math.max(1, place), 0) % 103
}

function patternOf(value: number): string {
  const pattern = code128Patterns[value]
  if (pattern === undefined) throw new Error(`Code 128 has the values 0 to 106, but asked was ${value}`)
  return pattern
}

const startB = 104
const stop = 106

/** Widths of bar, space, bar, space, bar, space of each value; the stop has one bar more. */
export const code128Patterns: readonly string[] = `
212222 222122 222221 121223 121322 131222 122213 122312 132212 221213 221312 231212 112232 122132 122231 113222
123122 123221 223211 221132 221231 213212 223112 312131 311222 321122 321221 312212 322112 322211 212123 212321
232121 111323 131123 131321 112313 132113 132311 211313 231113 231311 112133 112331 132131 113123 113321 133121
313121 211331 231131 213113 213311 213131 311123 311321 331121 312113 312311 332111 314111 221411 431111 111224
111422 121124 121421 141122 141221 112214 112412 122114 122411 142112 142211 241211 221114 413111 241112 134111
111242 121142 121241 114212 124112 124211 411212 421112 421211 212141 214121 412121 111143 111341 131141 114113
114311 411113 411311 113141 114131 311141 411131 211412 211214 211232 2331112`
  .trim()
  .split(/\s+/)
