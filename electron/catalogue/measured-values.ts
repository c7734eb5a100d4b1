/** A closed interval in the attribute's own unit; a single value has equal ends. */
export interface Interval {
  readonly low: number
  readonly high: number
}

/** What a cell of the catalogue or a plate states: numbers as alternatives that may each be an interval, or words. */
export type StatedValue =
  | { readonly kind: 'numbers'; readonly alternatives: readonly Interval[] }
  | { readonly kind: 'words'; readonly words: string }

/**
 * Reads `230`, `220-240`, `220..240`, `115/230`, `12 µF` or `12000 nF` in the attribute's unit. An attribute without a
 * unit, or with the unit `text`, is words: there `G 3/4` is one thread and not two numbers. Undefined: not readable.
 */
export function readValue(text: string, unit: string): StatedValue | undefined {
  const squeezed = text.normalize('NFKC').trim()
  if (squeezed === '') return undefined
  if (unit === '' || unit.toLowerCase() === 'text') return { kind: 'words', words: squeezeWords(squeezed) }
  const alternatives = squeezed.split(/[/|]/).map(part => readInterval(part.trim(), unit))
  return alternatives.every(interval => interval !== undefined)
    ? { kind: 'numbers', alternatives }
    : undefined
}

/** Words compare without case and spaces: `G 3/4` is `g3/4`, and never `3/4 GHT`. */
function squeezeWords(words: string): string {
  return words.toUpperCase().replace(/\s/g, '')
}

const numberText = '[+-]?\\d+(?:\\.\\d+)?'
const measured = new RegExp(`^(${numberText})(?:\\s*(?:\\.\\.|-|–|to)\\s*(${numberText}))?\\s*(\\D.*)?$`)

/** Plates mark an alternating supply in the unit's wake: `230 V~`, `230 V AC`. */
const alternating = /\s*(~|∼|AC)$/i

function readInterval(text: string, unit: string): Interval | undefined {
  const found = measured.exec(text)
  if (found === null) return undefined
  const factor = unitFactor((found[3] ?? unit).replace(alternating, ''), unit)
  if (factor === undefined) return undefined
  const low = Number(found[1]) * factor
  const high = found[2] === undefined ? low : Number(found[2]) * factor
  return low <= high ? { low, high } : undefined
}

/** SI prefixes as powers of ten (BIPM, The International System of Units, 9th edition, table 7). `u` is typed for µ. */
const prefixPowers: Readonly<Record<string, number>> = {
  p: -12,
  n: -9,
  u: -6,
  μ: -6,
  m: -3,
  c: -2,
  '': 0,
  k: 3,
  M: 6,
}

/** What a number in one unit is multiplied by to be in the other; undefined where they do not measure the same. */
function unitFactor(from: string, to: string): number | undefined {
  const [one, other] = [splitUnit(from), splitUnit(to)]
  if (one.base !== other.base) return undefined
  return 10 ** (one.power - other.power)
}

/** `mm` and `kg` are m and g with a prefix; they stand here for those who write them in capitals. */
const baseUnits = ['V', 'Hz', 'W', 'F', 'Ω', 'A', 'bar', 'Pa', 'm', 'mm', '°C', 'l', 'g', 'kg']

/** 1 bar is 100 kPa (the same brochure, table 8 of its 8th edition); from memory. */
const barPower = 5

/** `nF` is F with -9. A word that is no unit with a prefix, such as `pins`, stands for itself. */
function splitUnit(written: string): { readonly base: string; readonly power: number } {
  const unit = written.normalize('NFKC').replace(/ohms?$/i, 'Ω')
  for (const base of baseUnits) {
    const power = prefixPowers[unit.slice(0, unit.length - base.length)]
    if (unit.endsWith(base) && power !== undefined)
      return base === 'bar' ? { base: 'Pa', power: power + barPower } : { base, power }
  }
  // Plates and keyboards disagree about capitals: 230v is 230 V. A prefix keeps its case, for m and M differ.
  const anyCase = baseUnits.find(base => base.toLowerCase() === unit.toLowerCase())
  return anyCase === undefined ? { base: unit.toLowerCase(), power: 0 } : splitUnit(anyCase)
}
