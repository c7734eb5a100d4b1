/**
 * How numbers are printed, apart from their characters: a million models are printed in a few hundred forms, so that a
 * form's number and the key say a printed number in two bytes.
 */
export interface PrintedForms {
  /** Each form: what is printed, with `asInKey` or `lowerCase` in the place of a character of the key. */
  readonly patterns: readonly string[]
  /** Bit j of a form: a separator stands before the key's character j. Past 32 characters none is marked. */
  readonly separators: Uint32Array
}

const asInKey = '\u0000'
const lowerCase = '\u0001'
/** Begins a form that is the whole printed number, since its characters are not those of its key. */
const inFull = '\u0002'

/** Gathers the forms of keys and what is printed for them. */
export class FormCollector {
  readonly #numbers = new Map<string, number>()
  readonly #patterns: string[] = []
  readonly #separators: number[] = []

  /** The number of the form in which a key is printed. */
  numberOf(key: string, printed: string): number {
    const pattern = patternOf(key, printed)
    const separators = markSeparators(key, printed)
    const name = `${separators} ${pattern}`
    const known = this.#numbers.get(name)
    if (known !== undefined) return known
    const number = this.#patterns.push(pattern) - 1
    this.#separators.push(separators)
    this.#numbers.set(name, number)
    return number
  }

  forms(): PrintedForms {
    return { patterns: this.#patterns, separators: Uint32Array.from(this.#separators) }
  }
}

/** What is printed for a key in a form. */
export function printKey({ patterns }: PrintedForms, form: number, key: string): string {
  return fillPattern(patterns[form] ?? inFull, key)
}

/** Before which of the key's characters a separator is printed: what is not the key's next character is one. */
export function markSeparators(key: string, printed: string): number {
  const text = printed.normalize('NFKC').toUpperCase()
  let marks = 0
  let at = 0
  for (let i = 0; i < text.length && at < Math.min(key.length, 32); i++)
    if (text.charCodeAt(i) === key.charCodeAt(at)) at += 1
    else if (at > 0) marks |= 1 << at
  return marks >>> 0
}

function fillPattern(pattern: string, key: string): string {
  if (pattern.startsWith(inFull)) return pattern.slice(inFull.length)
  let at = 0
  let printed = ''
  for (const unit of pattern.split('')) {
    if (unit === asInKey) printed += key.charAt(at++)
    else if (unit === lowerCase) printed += key.charAt(at++).toLowerCase()
    else printed += unit
  }
  return printed
}

function patternOf(key: string, printed: string): string {
  let at = 0
  let pattern = ''
  for (let i = 0; i < printed.length; i++) {
    const unit = printed.charAt(i)
    const wanted = key.charAt(at)
    if (wanted !== '' && unit === wanted) pattern += asInKey
    else if (wanted !== '' && unit === wanted.toLowerCase()) pattern += lowerCase
    else {
      pattern += unit
      continue
    }
    at += 1
  }
  return at === key.length && fillPattern(pattern, key) === printed ? pattern : inFull + printed
}
