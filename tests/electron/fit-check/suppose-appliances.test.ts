import { describe, expect, test } from 'vitest'
import { decideFit } from '../../../electron/fit-check/decide-fit.ts'
import { daysOf } from '../../../electron/fit-check/made-dates.ts'
import { asReadings } from '../../../electron/fit-check/read-question.ts'
import type { SerialRange } from '../../../electron/fit-check/serial-ranges.ts'
import { aDossier, aModel, aStatement } from '../../builders/fit-dossier.ts'

describe('a serial that has an order with one of two ranges', () => {
  const dossier = aDossier({
    statements: [
      aStatement(1, { part: 1, serial: { from: '4000', to: '4999' } }),
      aStatement(2, { part: 1, says: 'excludes', serial: { from: 'A100', to: 'A199' } }),
    ],
  })
  test.each([
    ['decides by that one', 'A150', 'does-not-fit'],
    ['and leaves the other open', 'A250', 'ask'],
    ['is in no range of another form', '4500', 'fits'],
  ])('%s: %s', (_title, serial, verdict) => {
    expect(decideFit(dossier, [aModel('WX12')], asReadings({ serial })).verdict).toBe(verdict)
  })
})

describe('what a serial would show is named by the ranges that it lies in', () => {
  const check = (ranges: SerialRange[], expected: string[]) => {
    const statements = ranges.map((serial, at) => aStatement(at + 1, { part: 1, serial }))
    const { ask } = decideFit(aDossier({ statements }), [aModel('WX12')], asReadings({}))
    expect(ask.flatMap(({ means }) => means.map(({ value }) => value))).toEqual(expected)
  }
  test.each<[SerialRange[], string[]]>([
    [[{ from: null, to: '4999' }], ['to 4999', 'any other']],
    [[{ from: '5000', to: null }], ['5000 on', 'any other']],
    [[{ from: '4000', to: '4999' }], ['4000 to 4999', 'any other']],
    [
      [
        { from: '4000', to: '4999' },
        { from: '4500', to: null },
      ],
      ['4000 to 4999', '4000 to 4999 and 4500 on', '4500 on', 'any other'],
    ],
  ])('%j', check)
})

test('a date code that leaves two decades open fits where the part fits in both', () => {
  const statements = [
    aStatement(1, { made: { from: '2004', to: '2004' } }),
    aStatement(2, { made: { from: '2014', to: '2014' } }),
  ]
  const model = aModel('WX12', { madeBySerial: [daysOf('2004-06'), daysOf('2014-06')] })
  const { verdict } = decideFit(aDossier({ statements }), [model], asReadings({ serial: '4061234' }))
  expect(verdict).toBe('fits')
})
