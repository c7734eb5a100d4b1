import { expect, test } from 'vitest'
import { filterFamilies } from '../../../renderer/counter/filter-families.ts'
import { makeFamily } from '../../builders/fitting-family.ts'

const families = [
  makeFamily('drain-pump', { name: 'Dishwasher drain pump, bayonet', function: 'drain' }),
  makeFamily('drain-hose', {
    name: 'Drain hose, standard',
    function: 'drain',
    parts: [{ partNumber: '7E5306', description: 'Hose' }],
  }),
  makeFamily('door-seal', {
    name: 'Dishwasher door seal, U-section',
    function: 'door and seal',
    parts: [{ partNumber: 'K7-0369-77', maker: 'Kessolm', description: 'Door seal' }],
  }),
]
const check = (words: string, expected: readonly string[]) =>
  expect(filterFamilies(families, words).map(({ family }) => family)).toEqual(expected)

test('no words leave everything in its order', () => check('  ', ['drain-pump', 'drain-hose', 'door-seal']))
test('a word of the name or of the function is found', () => check('drain', ['drain-pump', 'drain-hose']))
test('every word must be found, in whatever order', () => check('pump drain', ['drain-pump']))
test('a slip of the finger is forgiven', () => check('dor seel', ['door-seal']))
test('a part number finds its family', () => check('7E5306', ['drain-hose']))
test('a word that is nowhere leaves nothing', () => check('magnetron', []))
