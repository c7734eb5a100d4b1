import { expect, test } from 'vitest'
import {
  coverFromStock,
  type SpareStock,
  type WantingPart,
} from '../../../../electron/reorder/proposal/cover-from-stock.ts'

const wants = (partId: number, pieces: number, kind: WantingPart['kind'] = 'genuine'): WantingPart => ({
  ...{ partId, pieces, kind },
})
const has = (partId: number, spare: number, more: Partial<SpareStock> = {}): SpareStock => ({
  ...{ partId, partNumber: `P-${partId}`, kind: 'genuine', spare, isDead: false },
  ...more,
})

interface Given {
  readonly wanting: readonly WantingPart[]
  readonly spare: readonly SpareStock[]
  readonly usesPatternStock?: boolean
}

/** Every part may stand for every other. What is used by whom: `1: 2 of P-3`. */
function check({ wanting, spare, usesPatternStock = false }: Given, expected: readonly string[]): void {
  const ids = [...wanting, ...spare].map(({ partId }) => partId)
  const covered = coverFromStock(wanting, {
    interchangeable: new Map(ids.map(id => [id, ids.filter(other => other !== id)])),
    spare: new Map(spare.map(stock => [stock.partId, stock])),
    usesPatternStock,
  })
  const found = [...covered].flatMap(([id, used]) =>
    used.map(({ partNumber, quantity }) => `${id}: ${quantity} of ${partNumber}`),
  )
  expect(found.sort()).toEqual([...expected].sort())
}

test.each<[string, Given, readonly string[]]>([
  ['nothing lies spare', { wanting: [wants(1, 2)], spare: [] }, []],
  ['no more is used than is wanted', { wanting: [wants(1, 2)], spare: [has(3, 5)] }, ['1: 2 of P-3']],
  ['no more is used than lies there', { wanting: [wants(1, 5)], spare: [has(3, 2)] }, ['1: 2 of P-3']],
  [
    'what nobody asks for is used first',
    { wanting: [wants(1, 3)], spare: [has(3, 2), has(4, 2, { isDead: true })] },
    ['1: 2 of P-4', '1: 1 of P-3'],
  ],
  [
    'a piece is used once, by whoever wants most',
    { wanting: [wants(1, 1), wants(2, 3)], spare: [has(4, 3)] },
    ['2: 3 of P-4'],
  ],
  [
    'a pattern part does not take the place of a genuine one',
    { wanting: [wants(1, 2)], spare: [has(3, 5, { kind: 'pattern' })] },
    [],
  ],
  [
    'unless the shop allows it',
    { wanting: [wants(1, 2)], spare: [has(3, 5, { kind: 'pattern' })], usesPatternStock: true },
    ['1: 2 of P-3'],
  ],
  [
    'a genuine part may take the place of a pattern one',
    { wanting: [wants(1, 2, 'pattern')], spare: [has(3, 5)] },
    ['1: 2 of P-3'],
  ],
])('%s', (_fact, given, expected) => check(given, expected))
