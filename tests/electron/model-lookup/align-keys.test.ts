import fc from 'fast-check'
import { expect, test } from 'vitest'
import { alignCost, alignmentCosts } from '../../../electron/model-lookup/align-keys.ts'
import { explainDifferences } from '../../../electron/model-lookup/explain-differences.ts'
import { type Alphabet, encodeKey } from '../../../electron/model-lookup/fold-characters.ts'
import { type KeyTable, segmentsAt } from '../../../electron/model-lookup/key-table.ts'
import { anIndex } from '../../builders/model-index.ts'

const tableOf = (printed: string): KeyTable => {
  const [layer] = anIndex({ Korrel: { models: [printed] } }).layers
  if (layer === undefined) throw new Error('an index has a layer')
  return layer.numbers
}

const check = (typed: string, printed: string, cost: number) => {
  const numbers = tableOf(printed)
  expect(alignCost(numbers, encodeKey(numbers.alphabet, typed), 0, 1000)).toBe(cost)
}

test.each<[string, string, number]>([
  ['WX4547', 'WX4547', 0],
  ['WX4S47', 'WX4547', 4],
  ['WX4647', 'WX4547', 16],
  ['WX4X47', 'WX4547', 20],
  ['WX?547', 'WX4547', 2],
  ['WX447', 'WX4547', 14],
  ['WX45947', 'WX4547', 16],
  ['WX45547', 'WX4547', 12],
  ['WX5447', 'WX4547', 14],
  ['WX4547', 'WX4547C', 5],
  ['WX4547', 'WX4547-12', 7],
  ['WX45', 'WX4547', 9],
  ['4547', 'WX4547', 10],
  ['X4547', 'WX4547', 9],
])('%s for %s costs %i', check)

const plateCharacters = fc.string({ unit: fc.constantFrom(...'0OD1IAC3?'), minLength: 1, maxLength: 9 })
const keyCharacters = fc.string({ unit: fc.constantFrom(...'0OD1IAC3'), minLength: 1, maxLength: 20 })

test('the fast alignment costs what the plain recurrence says', () => {
  fc.assert(
    fc.property(plateCharacters, keyCharacters, (text, key) => {
      const numbers = tableOf(key)
      const expected = plainCost(numbers.alphabet, text, key, segmentsAt(numbers, 0))
      check(text, key, expected)
      const limit = Math.max(1, expected)
      const limited = alignCost(numbers, encodeKey(numbers.alphabet, text), 0, limit)
      expect(limited).toBe(Math.min(expected, limit))
    }),
    { numRuns: 300 },
  )
})

test('the differences turn what was typed into what the catalogue has', () => {
  fc.assert(
    fc.property(plateCharacters, keyCharacters, (text, key) => {
      const numbers = tableOf(key)
      const differences = explainDifferences({
        alphabet: numbers.alphabet,
        text,
        key,
        marks: segmentsAt(numbers, 0),
      })
      for (const { at, catalogue } of differences)
        expect(catalogue === '' || key.charAt(at - 1) === catalogue).toBe(true)
      const typedThere = differences.map(({ typed }) => typed).join('')
      const untouched = [...key].filter((_, place) =>
        differences.every(({ at, catalogue }) => at !== place + 1 || catalogue === ''),
      )
      expect(sorted(typedThere + untouched.join(''))).toBe(sorted(text))
    }),
    { numRuns: 300 },
  )
})

function sorted(text: string): string {
  return [...text].sort().join('')
}

/** The recurrence as it is defined, with whole tables and no early stop. */
function plainCost(alphabet: Alphabet, text: string, key: string, marks: number): number {
  const { headCut, headCharacter, tailCut, tailCharacter, cutAtSegment } = alignmentCosts
  const segment = (at: number) => ((marks >>> at) & 1 ? cutAtSegment : 0)
  const head = (at: number) => (at === 0 ? 0 : headCut + headCharacter * at - segment(at))
  const tail = (at: number) => {
    const left = key.length - at
    return left === 0 ? 0 : tailCut + tailCharacter * left - segment(at)
  }
  const known = new Map<string, number>()
  const upTo = (i: number, j: number): number => {
    const name = `${i},${j}`
    const before = known.get(name)
    if (before !== undefined) return before
    const value = i === 0 ? head(j) : Math.min(...waysTo(i, j))
    known.set(name, value)
    return value
  }
  const waysTo = (i: number, j: number): number[] => {
    const isDoubled = i > 1 && text[i - 1] === text[i - 2]
    const ways = [upTo(i - 1, j) + (isDoubled ? alignmentCosts.doubled : alignmentCosts.added)]
    if (j === 0) return ways
    ways.push(upTo(i, j - 1) + alignmentCosts.missing)
    ways.push(upTo(i - 1, j - 1) + pair(text.charAt(i - 1), key.charAt(j - 1)))
    const isSwap = i > 1 && j > 1 && text[i - 1] === key[j - 2] && text[i - 2] === key[j - 1]
    if (isSwap && text[i - 1] !== text[i - 2]) ways.push(upTo(i - 2, j - 2) + alignmentCosts.swapped)
    return ways
  }
  const pair = (typed: string, printed: string) => {
    if (typed === '?') return alignmentCosts.unreadable
    const [one = 0, other = 0] = encodeKey(alphabet, typed + printed)
    return one === other ? 0 : (alphabet.weights[(one << 8) | other] ?? Number.NaN)
  }
  const ends = Array.from({ length: key.length }, (_, at) => at + 1)
  return Math.min(...ends.map(at => upTo(text.length, at) + tail(at)))
}
