import fc from 'fast-check'
import { expect, test } from 'vitest'
import { RowLines } from '../../../../electron/catalogue/fitments/row-lines.ts'

test('tells the line of each row, and which of the rows on it this is', () => {
  fc.assert(
    fc.property(fc.array(fc.constantFrom(0, 1, 1, 1, 1, 2, 40), { minLength: 1 }), steps => {
      const lines = new RowLines()
      let line = 1
      const expected = steps.map((step, row) => {
        line += step
        lines.add(row, line)
        return line
      })
      for (const [row, at] of expected.entries())
        expect(lines.lineOf(row)).toEqual({ line: at, nth: row - expected.indexOf(at) })
    }),
  )
})
