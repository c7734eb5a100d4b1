import { describe, expect, test } from 'vitest'
import { countPerAppliance, positionsOf } from '../../../electron/fit-check/count-per-appliance.ts'
import { aStatement } from '../../builders/fit-dossier.ts'

describe('one appliance takes the count of every position, and a source that says more is heard', () => {
  const check = (
    said: [position: string | null, quantity: number | null][],
    count: number | null,
    positions: string[],
  ) => {
    const statements = said.map(([position, quantity], at) => aStatement(at + 1, { position, quantity }))
    expect(countPerAppliance(statements)).toBe(count)
    expect(positionsOf(statements)).toEqual(positions)
  }
  test.each<[[string | null, number | null][], number | null, string[]]>([
    [[], null, []],
    [[[null, null]], null, []],
    [[[null, 2]], 2, []],
    [
      [
        [null, 2],
        [null, 4],
      ],
      4,
      [],
    ],
    [
      [
        ['left', 1],
        ['right', 1],
      ],
      2,
      ['left', 'right'],
    ],
    [
      [
        ['left', null],
        ['right', null],
      ],
      2,
      ['left', 'right'],
    ],
    [
      [
        ['upper', 2],
        ['lower', 3],
        ['upper', 1],
      ],
      5,
      ['lower', 'upper'],
    ],
    [
      [
        [null, 2],
        ['left', 2],
        ['right', 1],
      ],
      3,
      ['left', 'right'],
    ],
    [
      [
        ['left', 1],
        [null, 4],
        ['left', 3],
        ['left', 2],
      ],
      4,
      ['left'],
    ],
    [
      [
        [null, 4],
        ['left', 1],
      ],
      4,
      ['left'],
    ],
  ])('%j: %s', check)
})
