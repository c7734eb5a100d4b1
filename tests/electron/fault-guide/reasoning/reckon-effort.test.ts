import { expect, test } from 'vitest'
import { type CheckWork, reckonEffort } from '../../../../electron/fault-guide/reasoning/reckon-effort.ts'

function check(work: Partial<CheckWork>, expected: number): void {
  expect(reckonEffort({ minutes: 4, hazards: [], competence: 'anyone', ...work }).minutes).toBe(expected)
}

test('a harmless check that anyone can do takes its minutes', () => {
  check({}, 4)
})

test('precautions are added to it, and told one by one', () => {
  check({ hazards: ['mains', 'water'], competence: 'repairer' }, 11)
  expect(reckonEffort({ minutes: 4, hazards: ['mains'], competence: 'repairer' }).added).toEqual([
    { why: 'mains', minutes: 3 },
    { why: 'repairer', minutes: 2 },
  ])
})

test('work on a live appliance is put off as long as anything else tells as much', () => {
  check({ hazards: ['mains'], competence: 'live-testing' }, 22)
})
