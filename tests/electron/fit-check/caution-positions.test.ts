import { expect, test } from 'vitest'
import { cautionPositions } from '../../../electron/fit-check/caution-positions.ts'
import { decideFit } from '../../../electron/fit-check/decide-fit.ts'
import type { Statement } from '../../../electron/fit-check/part-dossier.ts'
import { asReadings } from '../../../electron/fit-check/read-question.ts'
import { aDossier, aModel, aStatement } from '../../builders/fit-dossier.ts'

const check = (statements: readonly Statement[], expected: readonly string[]) => {
  const decision = decideFit(aDossier({ statements: [...statements] }), [aModel('WX12')], asReadings({}))
  expect(cautionPositions(decision).map(({ text }) => text)).toEqual(expected)
}

const notLeft = aStatement(1, { part: 1, says: 'excludes', position: 'left', source: 'Harrow list' })

test.each<[string, readonly Statement[], readonly string[]]>([
  [
    'a part that fits, but not on the left, is said to',
    [notLeft, aStatement(2, { part: 1, position: 'right' })],
    ['Do not fit it in the position left: Harrow list.'],
  ],
  [
    'two sources that forbid the same place are named together',
    [
      notLeft,
      aStatement(2, { part: 1, position: 'right' }),
      aStatement(3, { part: 1, says: 'excludes', position: 'left', source: 'Tarrow list' }),
    ],
    ['Do not fit it in the position left: Harrow list, Tarrow list.'],
  ],
  [
    'where nothing is forbidden there is nothing to mind',
    [aStatement(2, { part: 1, position: 'right' })],
    [],
  ],
  ['a part that fits nowhere is refused, not cautioned', [notLeft], []],
])('%s', (_title, statements, expected) => check(statements, expected))
