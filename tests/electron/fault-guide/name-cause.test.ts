import { expect, test } from 'vitest'
import { nameCause } from '../../../electron/fault-guide/name-cause.ts'

test.each([
  ['by its key', { causeKey: 'pump worn', cause: null }, 'pump worn'],
  ['in the guide’s words, however they are written', { causeKey: null, cause: 'Pump worn.' }, 'pump worn'],
  ['in words of its own', { causeKey: null, cause: 'the pump was worn out' }, null],
  ['not at all', { causeKey: null, cause: null }, null],
])('a job that names its cause %s is told', (_, job, expected) => {
  expect(nameCause(['filter blocked', 'pump worn'], job)).toBe(expected)
})
