import { z } from 'zod'
import { findGtinFault } from '../check-gtin.ts'
import { readValue } from '../measured-values.ts'
import { ownText } from './own-text.ts'
import { isPartialDate } from './partial-date.ts'

// One cell each, already without the blanks round it. Empty means not known and becomes null; a reason follows the
// name of the column.

const longest = 200

/** Something must stand here, on one line: a line break in a name comes from a quote in the wrong place. */
export const word = z
  .string()
  .min(1, 'is empty: write it, or leave the row out')
  .max(longest, `is longer than ${longest} characters`)
  .regex(/^\P{Cc}*$/u, 'holds a line break or another control character: write it on one line')

/** Any text; where it is not known it stays empty. */
export const text = z
  .string()
  .max(2_000, 'is longer than 2000 characters')
  .regex(/^[\P{Cc}\n\t]*$/u, 'holds a control character: take it out')

export const wordOrUnknown = unlessEmpty(word)

/** `2014`, `2014-06` or `2014-06-17`. */
export const dateOrUnknown = unlessEmpty(
  z.string().refine(isPartialDate, {
    error: ({ input }) => `“${input}” is no date: write 2014, 2014-06 or 2014-06-17`,
  }),
)

export const wholeDate = z.string().refine(written => written.length === 10 && isPartialDate(written), {
  error: ({ input }) => `“${input}” is no day: write it as 2014-06-17`,
})

/** A figure as it is printed on a plate: `230`, `220-240`, `220..240` or `115/230`, perhaps with its unit. */
export function ratingOrUnknown(unit: 'V' | 'Hz' | 'W') {
  return unlessEmpty(
    z.string().refine(printed => readValue(printed, unit) !== undefined, {
      error: ({ input }) => `“${input}” is no figure in ${unit}: write 230, 220-240 or 115/230`,
    }),
  )
}

/** A whole number that is not below `least`. */
export function count(least: 0 | 1) {
  return z
    .string()
    .regex(/^\d{1,9}$/, { error: ({ input }) => `“${input}” is no whole number` })
    .transform(Number)
    .refine(number => number >= least, `must be ${least} or more`)
}

export function countOrUnknown(least: 0 | 1) {
  return unlessEmpty(count(least))
}

export function countOr(otherwise: number) {
  return unlessEmpty(count(1)).transform(number => number ?? otherwise)
}

/** Money or a measure as an exact decimal. */
export const decimal = z.string().regex(/^\d{1,9}(\.\d{1,4})?$/, {
  error: ({ input }) => `“${input}” is no amount: write digits with a point, as 12.50`,
})

export const decimalOrUnknown = unlessEmpty(decimal)

export function oneOf<const Words extends readonly [string, ...string[]]>(...words: Words) {
  return z.enum(words, {
    error: ({ input }) =>
      `${input === '' ? 'is empty' : `“${input}” is not known here`}: write ${words.join(' or ')}`,
  })
}

export function oneOfOrUnknown<const Words extends readonly [string, ...string[]]>(...words: Words) {
  return unlessEmpty(oneOf(...words))
}

export const yesOrNo = oneOf('yes', 'no').transform(answer => answer === 'yes')

export const yesNoOrUnknown = unlessEmpty(yesOrNo)

/** Words with a `|` between them, each once. */
export const list = z.string().transform(cell => [
  ...new Set(
    cell
      .split('|')
      .map(entry => entry.trim())
      .filter(entry => entry !== ''),
  ),
])

/** Words with a `|` between them, each one of these. */
export function listOf<const Word extends string>(what: string, ...words: readonly Word[]) {
  return list.transform((named, context): Word[] => {
    const isKnown = (one: string): one is Word => (words as readonly string[]).includes(one)
    const stranger = named.find(one => !isKnown(one))
    if (stranger !== undefined)
      context.addIssue({
        code: 'custom',
        message: `“${stranger}” is no ${what} known here: write ${words.join(', ')}, with a | between two`,
      })
    return named.filter(isKnown)
  })
}

/** Digits, their separators dropped, with the check digit right. */
export const gtinOrUnknown = unlessEmpty(
  z
    .string()
    .transform(printed => printed.replace(/[\s-]/g, ''))
    .superRefine((gtin, context) => {
      const fault = findGtinFault(gtin)
      if (fault !== undefined) context.addIssue({ code: 'custom', message: fault })
    }),
)

/** Null for an empty cell, else what the cell says. A column repeats its few values, so each is read once. */
function unlessEmpty<Value>(cell: z.ZodType<Value, string>) {
  const read = new Map<string, Value>()
  return z.string().transform((printed, context): Value | null => {
    if (printed === '') return null
    const known = read.get(printed)
    if (known !== undefined) return known
    const kept = ownText(printed)
    const parsed = cell.safeParse(kept)
    if (!parsed.success) {
      for (const { message } of parsed.error.issues) context.addIssue({ code: 'custom', message })
      return z.NEVER
    }
    if (read.size > mostKept) read.clear()
    read.set(kept, parsed.data)
    return parsed.data
  })
}

const mostKept = 10_000
