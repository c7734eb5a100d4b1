import { describe, expect, test } from 'vitest'
import { decideFit } from '../../../electron/fit-check/decide-fit.ts'
import { daysOf } from '../../../electron/fit-check/made-dates.ts'
import { asReadings } from '../../../electron/fit-check/read-question.ts'
import type { SerialRange } from '../../../electron/fit-check/serial-ranges.ts'
import { readStated } from '../../../electron/fit-check/suppose-appliances.ts'
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

describe('what a plate prints is known by each name that catalogues give it', () => {
  const model = aModel('WX12', { volts: '230', hertz: '50', watts: '2000' })
  test.each([
    ['volts', '230', '127'],
    ['voltage', '230', '127'],
    ['supply voltage', '230', '127'],
    ['rated voltage', '230', '127'],
    ['hertz', '50', '60'],
    ['frequency', '50', '60'],
    ['watts', '2000', '1800'],
    ['bore', undefined, undefined],
  ])('%s: %s of the model, and %s where the plate was read', (attribute, ofModel, ofPlate) => {
    const plate = asReadings({ volts: '127', hertz: '60', watts: '1800' })
    expect(readStated(attribute, aDossier({}), asReadings({}))(model)).toBe(ofModel)
    expect(readStated(attribute, aDossier({}), plate)(model)).toBe(ofPlate)
  })
})

describe('when an appliance was made, by what is read and what the catalogue and the serial say', () => {
  const later = aDossier({ statements: [aStatement(1, { made: { from: '2011-06' } })] })
  test('a year read is narrowed by when the model was made', () => {
    const model = aModel('WX12', { made: { from: '2011-06' } })
    expect(decideFit(later, [model], asReadings({ made: '2011' })).verdict).toBe('fits')
    expect(decideFit(later, [aModel('WX12')], asReadings({ made: '2011' })).verdict).toBe('ask')
  })
  test('a year read that the model was not made in is narrowed by the date code', () => {
    const readings = asReadings({ made: '2011', serial: '1081234' })
    const dated = aModel('WX12', { made: { from: '2015' }, madeBySerial: [daysOf('2011-08')] })
    expect(decideFit(later, [dated], readings).verdict).toBe('fits')
    expect(decideFit(later, [{ ...dated, madeBySerial: [] }], readings).verdict).toBe('ask')
  })
})

test('a condition that only the first or the last day of making meets leaves the date to be asked for', () => {
  const verdict = (said: { from?: string; to?: string }, made: { from?: string; to?: string }) =>
    decideFit(
      aDossier({ statements: [aStatement(1, { made: said })] }),
      [aModel('WX12', { made })],
      asReadings({}),
    ).verdict
  expect(verdict({ to: '2014-06-30' }, { from: '2014-06-30' })).toBe('ask')
  expect(verdict({ from: '2014-06-30' }, { to: '2014-06-30' })).toBe('ask')
})
