import { describe, expect, test } from 'vitest'
import { decideFit } from '../../electron/fit-check/decide-fit.ts'
import { asReadings } from '../../electron/fit-check/read-question.ts'
import { aDossier, aModel, aStatement } from '../builders/fit-dossier.ts'

/**
 * Kleene's strong three-valued tables (S. C. Kleene, Introduction to Metamathematics, 1952, § 64; from memory). Two
 * inclusions of one family are joined by OR, the two conditions of one statement by AND; T, F and U are conditions
 * that hold, fail, or wait for a reading of their own, so that both tables must come out cell by cell.
 */
const made = { T: {}, F: { to: '1999' }, U: { from: '2014-06' } }
const serial = { T: null, F: { from: '1', to: '9' }, U: { from: 'AA10', to: 'AA19' } }
const verdictOf = { T: 'fits', F: 'does-not-fit', U: 'ask' }
// 2014 straddles June; 50 is past 9 and not of the form AA10.
const plate = asReadings({ made: '2014', serial: '50' })

type Value = keyof typeof verdictOf

const rows: [Value, Value, Value, Value][] = [
  // one, other, OR, AND
  ['T', 'T', 'T', 'T'],
  ['T', 'U', 'T', 'U'],
  ['T', 'F', 'T', 'F'],
  ['U', 'T', 'T', 'U'],
  ['U', 'U', 'U', 'U'],
  ['U', 'F', 'U', 'F'],
  ['F', 'T', 'T', 'F'],
  ['F', 'U', 'U', 'F'],
  ['F', 'F', 'F', 'F'],
]

describe('two conditions', () => {
  const check = (one: Value, other: Value, or: Value, and: Value) => {
    const either = aDossier({
      statements: [aStatement(1, { made: made[one] }), aStatement(2, { serial: serial[other] })],
    })
    expect(decideFit(either, [aModel('WX12')], plate).verdict).toBe(verdictOf[or])
    const both = aDossier({ statements: [aStatement(1, { made: made[one], serial: serial[other] })] })
    expect(decideFit(both, [aModel('WX12')], plate).verdict).toBe(verdictOf[and])
  }
  test.each(rows)('%s with %s: or %s, and %s', check)
})
