import { expect, test } from 'vitest'
import { groupParts } from '../../../renderer/counter/group-parts.ts'
import { makePart } from '../../builders/fitting-family.ts'

const listed = [{ code: 'listed-family', text: 'Pump: listed.', source: 'Tarrow supplier list' }]

test('parts with the same verdict for the same reasons stand together, and the others apart', () => {
  const parts = [
    makePart({ partNumber: 'A', reasons: listed }),
    makePart({ partNumber: 'B', reasons: listed, verdict: 'does-not-fit' }),
    makePart({ partNumber: 'C', reasons: listed }),
    makePart({ partNumber: 'D', reasons: listed, alsoNeeds: ['E'] }),
  ]
  expect(groupParts(parts).map(group => group.parts.map(({ partNumber }) => partNumber))).toEqual([
    ['A', 'C'],
    ['B'],
    ['D'],
  ])
})
