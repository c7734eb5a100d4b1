import { describe, expect, test } from 'vitest'
import { followToCurrent, predecessorsOf, twinsOf } from '../../../electron/fit-check/follow-supersessions.ts'
import { anyDay, daysOf } from '../../../electron/fit-check/made-dates.ts'
import type { Replacement } from '../../../electron/fit-check/part-dossier.ts'
import { aReplacement, partIdOf } from '../../builders/fit-dossier.ts'

const both = { way: 'both' } as const

describe('a part number leads to the one supplied today', () => {
  /** The chain, and what is needed besides. */
  const check = (replacements: Replacement[], chain: number[], needs: string[] = []) => {
    const current = followToCurrent(partIdOf(1), replacements, daysOf('2014'))
    expect(current).toEqual({ partId: chain.at(-1), chain, alsoNeeds: needs })
  }
  test.each<[string, Replacement[], number[], string[]]>([
    ['that was never replaced', [], [1], []],
    ['by one step', [aReplacement(1, 2)], [1, 2], []],
    [
      'by several steps in whatever order they stand',
      [aReplacement(2, 3), aReplacement(1, 2)],
      [1, 2, 3],
      [],
    ],
    ['not by a step of another part', [aReplacement(2, 3)], [1], []],
    ['not backwards', [aReplacement(2, 1)], [1], []],
    [
      'with all that is needed on the way, once each',
      [aReplacement(1, 2, { alsoNeeds: ['S1', 'S2'] }), aReplacement(2, 3, { alsoNeeds: ['S2', 'S3'] })],
      [1, 2, 3],
      ['S1', 'S2', 'S3'],
    ],
    [
      'by a step that holds throughout',
      [aReplacement(1, 2, { made: { from: '2014', to: '2014-12' } })],
      [1, 2],
      [],
    ],
    ['not by a step that begins within', [aReplacement(1, 2, { made: { from: '2014-02' } })], [1], []],
    ['not by a step that ends within', [aReplacement(1, 2, { made: { to: '2014-11' } })], [1], []],
    ['stays where its twin is current too', [aReplacement(1, 2, both)], [1], []],
    ['goes with a twin that was replaced', [aReplacement(1, 2, both), aReplacement(2, 3)], [1, 2, 3], []],
    ['goes with a twin named the other way', [aReplacement(2, 1, both), aReplacement(2, 3)], [1, 2, 3], []],
    [
      'goes by its own step before a twin’s',
      [aReplacement(1, 2, both), aReplacement(2, 4), aReplacement(1, 3)],
      [1, 3],
      [],
    ],
  ])('%s', (_title, replacements, chain, needs) => check(replacements, chain, needs))
})

describe('twins are joined by replacements that go both ways', () => {
  const check = (replacements: Replacement[], expected: number[]) =>
    expect(twinsOf(partIdOf(1), replacements)).toEqual(expected)
  test.each<[string, Replacement[], number[]]>([
    ['itself alone', [], [1]],
    ['not by a step one way', [aReplacement(1, 2), aReplacement(3, 1)], [1]],
    ['either way round', [aReplacement(1, 2, both), aReplacement(3, 1, both)], [1, 2, 3]],
    ['through a twin', [aReplacement(3, 2, both), aReplacement(2, 1, both)], [1, 2, 3]],
    [
      'round a ring, once each',
      [aReplacement(1, 2, both), aReplacement(2, 3, both), aReplacement(3, 1, both)],
      [1, 2, 3],
    ],
    ['not those of others', [aReplacement(2, 3, both)], [1]],
  ])('%s', (_title, replacements, expected) => check(replacements, expected))
})

describe('a part takes the place of every one that leads to it', () => {
  const check = (replacements: Replacement[], expected: [number, string[]][]) => {
    const found = predecessorsOf(partIdOf(1), replacements, anyDay)
    expect(found.map(({ partId, alsoNeeds }) => [partId, [...alsoNeeds]])).toEqual(expected)
  }
  test.each<[string, Replacement[], [number, string[]][]]>([
    ['itself', [], [[1, []]]],
    ['not of what replaces it', [aReplacement(1, 2)], [[1, []]]],
    [
      'with what is needed on the way, once each',
      [aReplacement(2, 1, { alsoNeeds: ['S1'] }), aReplacement(3, 2, { alsoNeeds: ['S1', 'S2'] })],
      [
        [1, []],
        [2, ['S1']],
        [3, ['S1', 'S2']],
      ],
    ],
    [
      'of a twin, whichever way it is named',
      [aReplacement(2, 1, both), aReplacement(1, 3, both)],
      [
        [1, []],
        [2, []],
        [3, []],
      ],
    ],
    [
      'by the way that needs least, though it is longer',
      [
        aReplacement(2, 1, { alsoNeeds: ['S1', 'S2'] }),
        aReplacement(2, 3),
        aReplacement(3, 1, { alsoNeeds: ['S3'] }),
      ],
      [
        [1, []],
        [3, ['S3']],
        [2, ['S3']],
      ],
    ],
    [
      'by the first of two ways that need as much',
      [
        aReplacement(2, 1, { alsoNeeds: ['S1'] }),
        aReplacement(2, 3),
        aReplacement(3, 1, { alsoNeeds: ['S3'] }),
      ],
      [
        [1, []],
        [2, ['S1']],
        [3, ['S3']],
      ],
    ],
    [
      'not by a step that holds only for some dates',
      [aReplacement(2, 1, { made: { to: '2014' } })],
      [[1, []]],
    ],
  ])('%s', (_title, replacements, expected) => check(replacements, expected))
})
