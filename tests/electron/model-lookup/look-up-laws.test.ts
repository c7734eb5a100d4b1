import fc from 'fast-check'
import { expect, test } from 'vitest'
import { normaliseNumber } from '../../../electron/catalogue/normalise-number.ts'
import { findModels } from '../../../electron/model-lookup/find-models.ts'
import { findOpenModels } from '../../../electron/model-lookup/find-open-models.ts'
import { encodeKey } from '../../../electron/model-lookup/fold-characters.ts'
import type { ModelIndex } from '../../../electron/model-lookup/index-models.ts'
import type { OpenModels } from '../../../electron/model-lookup/open-models.ts'
import { plateKey } from '../../../electron/model-lookup/plate-key.ts'
import { rankEveryKey, rankLikelyKeys } from '../../../electron/model-lookup/rank-keys.ts'
import { anIndex } from '../../builders/model-index.ts'
import { type Damage, damageKey, damages, denseNumbers } from '../../builders/plate-damage.ts'

/** Any UTF-16 at all, halves of pairs included; most of it near the ASCII that plates have. */
const anyText = fc
  .array(fc.oneof(fc.integer({ min: 32, max: 126 }), fc.integer({ min: 0, max: 0xffff })), { maxLength: 60 })
  .map(units => String.fromCharCode(...units))
const noFacts = () => ({ salesNames: [], madeFrom: null, madeTo: null })
const chooser = fc.infiniteStream(fc.nat()).map(stream => (below: number) => {
  return (stream.next().value ?? 0) % Math.max(1, below)
})

test('normalising twice changes nothing', () => {
  fc.assert(
    fc.property(anyText, text => {
      expect(normaliseNumber(normaliseNumber(text))).toBe(normaliseNumber(text))
      expect(plateKey(plateKey(text))).toBe(plateKey(text))
    }),
    { numRuns: 300 },
  )
})

test('a model is always found by its own number, and alone', () => {
  fc.assert(
    fc.property(denseNumbers, fc.nat(), (numbers, pick) => {
      const number = numbers[pick % numbers.length] ?? ''
      const open = findOpenModels(anIndex({ Korrel: { models: numbers } }), { text: number })
      expect(open.outcome).toBe('exact')
      expect(open.models.map(({ modelNumber }) => modelNumber)).toEqual([number])
    }),
  )
})

test('any text gets an answer or a refusal, never a defect', () => {
  const index = anIndex({
    Korrel: { models: ['ODW4512/01', 'LÖ-99 ЖΩ'], salesNames: { Åse: ['ODW4512/01'] } },
  })
  fc.assert(
    fc.property(fc.oneof(anyText, fc.string({ maxLength: 60 })), text => {
      fc.pre(plateKey(text).replaceAll('?', '').length >= 3)
      const found = findModels({ index, readFacts: noFacts }, { text, top: 5 })
      expect(found.typed).toBe(text)
      expect(found.candidates.length).toBeLessThanOrEqual(5)
    }),
    { numRuns: 200 },
  )
})

/** A dense catalogue, one of its models, and each damage done to that model's number. */
const eachDamage = (
  check: (given: {
    index: ModelIndex
    numbers: readonly string[]
    truth: string
    kind: Damage
    text: string
  }) => void,
) =>
  fc.assert(
    fc.property(denseNumbers, fc.nat(), chooser, (numbers, pick, choose) => {
      const truth = numbers[pick % numbers.length] ?? ''
      const index = anIndex({ Korrel: { models: numbers } })
      for (const kind of damages) check({ index, numbers, truth, kind, text: damageKey(truth, kind, choose) })
    }),
  )

/**
 * The promise that fit-check rests on. Where the text is a stretch of the true number, right but for lookalikes and
 * unreadable characters, the true model is open; it may be absent only where the text is another model's whole number.
 * After any other single slip it is open too, or what agrees with the text is marked by agreeing with it.
 */
test('after any single damage the true model is left open, or the text agrees with another model', () =>
  eachDamage(({ index, numbers, truth, kind, text }) => {
    const open = findOpenModels(index, { text })
    const isOpen = open.models.some(({ key }) => key === truth)
    if (stretches.includes(kind)) expect(isOpen || numbers.includes(text) || isAnothersWhole(open)).toBe(true)
    else if (kind === 'unreadable character') expect(isOpen).toBe(true)
    else expect(isOpen || open.agreement !== 'differs').toBe(true)
  }))

const stretches: readonly Damage[] = [
  'as printed',
  'lookalike',
  'missing suffix',
  'missing head',
  'middle only',
]

/** One other model's whole number, but for lookalikes, and no model holds the text as printed. */
function isAnothersWhole({ models: [only, ...others], agreement, key }: OpenModels): boolean {
  return agreement === 'confusable' && others.length === 0 && only?.key.length === key.length
}

test('after any single damage the true model is among the candidates, unless others agree with the text', () =>
  eachDamage(({ index, truth, text }) => {
    const found = findModels({ index, readFacts: noFacts }, { text, top: 40 })
    const isListed = found.candidates.some(({ key }) => key === truth)
    expect(isListed || findOpenModels(index, { text }).agreement !== 'differs').toBe(true)
  }))

test('the trigrams lose no reading that one slip explains', () =>
  eachDamage(({ index: { numbers: table }, text }) => {
    const codes = encodeKey(table.alphabet, text)
    const wishes = {
      wanted: 1,
      margin: 0,
      dearest: 20,
      isThorough: true,
      surcharge: () => 0,
      countOf: () => 1,
    }
    const { ranked, unseenCost } = rankLikelyKeys(table, codes, wishes)
    const places = (found: typeof ranked) => found.map(({ position }) => position).sort((a, b) => a - b)
    // A short text may share nothing with what it means; the look-up then looks at every key.
    if (unseenCost > wishes.dearest || text.length > 8)
      expect(places(ranked)).toEqual(places(rankEveryKey(table, codes, wishes).ranked))
  }))

test('the same question has the same answer, in whatever order the models were listed', () => {
  fc.assert(
    fc.property(denseNumbers, numbers => {
      const ask = (models: readonly string[]) => {
        const index = anIndex({ Korrel: { models } })
        return damages.map(kind => {
          const text = damageKey(numbers[0] ?? '', kind, below => 3 % below)
          return findModels({ index, readFacts: noFacts }, { text, top: 10 })
        })
      }
      expect(ask([...numbers].reverse())).toEqual(ask(numbers))
    }),
    { numRuns: 30 },
  )
})
