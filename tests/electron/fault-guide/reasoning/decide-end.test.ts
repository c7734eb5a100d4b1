import { expect, test } from 'vitest'
import { decideEnd, rankRemedies } from '../../../../electron/fault-guide/reasoning/decide-end.ts'

function check(
  shares: Readonly<Record<string, number>>,
  checksLeft: number,
  expected: readonly string[],
): void {
  const remedies = rankRemedies(new Map(Object.entries(shares)), cause => cause.split(' ')[0] ?? cause)
  const decided = decideEnd(remedies, checksLeft)
  expect(decided.end === 'settled' ? decided.remedies.map(({ remedy }) => remedy) : [decided.end]).toEqual(
    expected,
  )
}

test('asking goes on while nothing is likely enough and a check is left', () => {
  check({ pump: 0.6, hose: 0.4 }, 1, ['not-yet'])
})

test('it ends as soon as one family is likely enough', () => {
  check({ pump: 0.85, hose: 0.15 }, 5, ['pump'])
})

test('two ways in which one part fails count together', () => {
  check({ 'pump worn': 0.5, 'pump burnt': 0.4, hose: 0.1 }, 5, ['pump'])
})

test('two families that no check tells apart are both named', () => {
  check({ pump: 0.5, board: 0.45, hose: 0.05 }, 0, ['pump', 'board'])
})

test('without a check and without a likely cause it cannot tell', () => {
  check({ pump: 0.4, board: 0.3, hose: 0.3 }, 0, ['cannot-tell'])
})
