import { expect, test } from 'vitest'
import { findOddReadings } from '../../../../electron/fault-guide/reasoning/find-odd-readings.ts'

const prior = new Map([
  ['pump', 0.6],
  ['hose', 0.4],
])
const forPump = (check: string, pump: number, hose: number) => ({
  check,
  likelihoods: new Map([
    ['pump', pump],
    ['hose', hose],
  ]),
})

function check(readings: readonly ReturnType<typeof forPump>[], odd: readonly string[]): void {
  expect(findOddReadings(prior, readings).map(found => found.check)).toEqual(odd)
}

test('readings that agree are not remarked on', () => {
  check([forPump('hum', 0.9, 0.05), forPump('coil', 0.8, 0.05)], [])
})

test('the one reading that three others speak against is named, whatever its place', () => {
  const three = ['hum', 'coil', 'flow'].map(name => forPump(name, 0.9, 0.05))
  check([forPump('kink', 0.05, 0.9), ...three], ['kink'])
  check([...three, forPump('kink', 0.05, 0.9)], ['kink'])
})

test('two readings that contradict each other are both named', () => {
  check([forPump('coil', 0.97, 0.001), forPump('kink', 0.001, 0.97)], ['coil', 'kink'])
})

test('an outcome that no cause of the guide makes likely is remarked on by itself', () => {
  check([forPump('smell', 0.03, 0.05)], ['smell'])
})

test('a rare cause that explains its reading is no contradiction', () => {
  expect(
    findOddReadings(
      new Map([
        ['pump', 0.97],
        ['hose', 0.03],
      ]),
      [forPump('kink', 0.02, 0.9)],
    ),
  ).toEqual([])
})
