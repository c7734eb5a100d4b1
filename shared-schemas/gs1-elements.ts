import { hasGs1CheckDigit } from './gs1-check-digit.ts'

/** One piece of what a GS1-128 or GS1 DataMatrix symbol says: what kind of fact, and the fact. */
export interface GsElement {
  readonly identifier: string
  readonly value: string
}

/** What a scanner sends where the symbol has its separator, FNC1. */
export const groupSeparator = '\u001d'

/**
 * Parts an element string into its facts. Undefined where it breaks a rule of the standard: an identifier that is not
 * known, a fact too short or too long, letters where digits belong, or a check digit that is wrong.
 */
export function readElements(text: string): readonly GsElement[] | undefined {
  const elements: GsElement[] = []
  let rest = text
  while (rest !== '') {
    const next = readOne(rest)
    if (next === undefined) return undefined
    elements.push(next.element)
    rest = next.rest
  }
  return elements.length === 0 ? undefined : elements
}

function readOne(text: string): { readonly element: GsElement; readonly rest: string } | undefined {
  const found = formats.find(({ identifier }) => identifier.test(text))
  const [identifier] = found?.identifier.exec(text) ?? []
  if (found === undefined || identifier === undefined) return undefined
  const after = text.slice(identifier.length)
  const end = found.isPredefined ? found.most : separatorOrEnd(after)
  const value = after.slice(0, end)
  if (!isWellFormed(value, found)) return undefined
  // A separator after a fact of predefined length is not asked for, and does no harm.
  const rest = after.slice(end)
  return { element: { identifier, value }, rest: rest.startsWith(groupSeparator) ? rest.slice(1) : rest }
}

function separatorOrEnd(text: string): number {
  const at = text.indexOf(groupSeparator)
  return at < 0 ? text.length : at
}

function isWellFormed(value: string, { least, most, isNumeric, isChecked }: Format): boolean {
  if (value.length < least || value.length > most || value.includes(groupSeparator)) return false
  if (isNumeric && !/^\d+$/.test(value)) return false
  return isNumeric || /^[\x21-\x7e]+$/.test(value) ? !isChecked || hasGs1CheckDigit(value) : false
}

interface Format {
  readonly identifier: RegExp
  readonly isPredefined: boolean
  readonly isNumeric: boolean
  readonly isChecked: boolean
  readonly least: number
  readonly most: number
}

/** A fact of predefined length, which needs no separator after it. */
const predefined = (identifier: RegExp, length: number, isChecked = false): Format => ({
  identifier,
  isPredefined: true,
  isNumeric: true,
  isChecked,
  least: length,
  most: length,
})

/** A fact that ends at the separator, or at the end of the symbol. */
const digits = (identifier: RegExp, least: number, most: number): Format => ({
  identifier,
  isPredefined: false,
  isNumeric: true,
  isChecked: false,
  least,
  most,
})
const characters = (identifier: RegExp, most: number): Format => ({
  ...digits(identifier, 1, most),
  isNumeric: false,
})

/**
 * The application identifiers that can stand on a part, its bag, its carton or its pallet, with their formats as GS1's
 * Barcode Syntax Dictionary lists them, which follows the General Specifications, 3.2. Those for produce, medicines,
 * coupons and the like are left out: where one of them is met, the string is not taken.
 */
const formats: readonly Format[] = [
  predefined(/^00/, 18, true),
  predefined(/^0[12]/, 14, true),
  characters(/^10/, 20),
  predefined(/^1[1-35-7]/, 6),
  predefined(/^20/, 2),
  characters(/^2[12]/, 20),
  characters(/^235/, 28),
  characters(/^24[01]/, 30),
  digits(/^242/, 1, 6),
  characters(/^243/, 20),
  characters(/^25[01]/, 30),
  characters(/^254/, 20),
  digits(/^30/, 1, 8),
  predefined(/^3[1-6]\d[0-5]/, 6),
  digits(/^37/, 1, 8),
  digits(/^39[02]\d/, 1, 15),
  digits(/^39[13]\d/, 4, 18),
  characters(/^40[013]/, 30),
  digits(/^402/, 17, 17),
  predefined(/^41[0-7]/, 13, true),
  characters(/^420/, 20),
  characters(/^421/, 12),
  digits(/^42[246]/, 3, 3),
  characters(/^710/, 20),
  characters(/^9[0-9]/, 90),
]
