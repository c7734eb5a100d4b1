import { describe, expect, test } from 'vitest'
import { findOpenModels } from '../../../electron/model-lookup/find-open-models.ts'
import { Refusal } from '../../../electron/requests/refusal.ts'
import { anIndex } from '../../builders/model-index.ts'

const index = anIndex({
  Ostrel: {
    models: ['ODW4512/01', 'ODW4512/02', 'ODW4520/02', 'OWM7716/04', 'QX200'],
    salesNames: {
      'Aqualane 44': ['ODW4512/01', 'ODW4512/02'],
      'Aqualane 52': ['ODW4520/02'],
      'Ostrel Finch 7': ['OWM7716/04'],
    },
  },
  Brennick: {
    models: [
      '53310754-06',
      '53310754-07',
      'QX200',
      'WX4547/C',
      'WX4547/Q',
      'WX 4547 CK NORTH EDITION 1234567890',
    ],
  },
  Lövane: { models: ['LV 141-54 B', 'LÖV9911'], salesNames: { 'Bäck 104': ['LV 141-54 B'] } },
})

interface Expected {
  readonly outcome: 'exact' | 'near' | 'several' | 'none'
  readonly models: readonly string[]
  readonly agreement?: 'agrees' | 'confusable' | 'differs'
}

const check = (text: string, expected: Expected, brand?: string) => {
  const open = findOpenModels(index, brand === undefined ? { text } : { text, brand })
  expect({
    outcome: open.outcome,
    models: open.models.map(({ modelNumber }) => modelNumber),
    agreement: open.agreement,
  }).toEqual({ agreement: 'agrees', ...expected })
}

describe('the very key leaves one model open', () => {
  test.each<[string, Expected]>([
    ['ODW4512/01', { outcome: 'exact', models: ['ODW4512/01'] }],
    ['odw 4512 01', { outcome: 'exact', models: ['ODW4512/01'] }],
    ['Mod. ODW4512-01', { outcome: 'exact', models: ['ODW4512/01'] }],
    ['lv141-54b', { outcome: 'exact', models: ['LV 141-54 B'] }],
    ['ＯＤＷ４５１２／０１', { outcome: 'exact', models: ['ODW4512/01'] }],
    [
      'WX4547 CK NORTH EDITION 1234567890',
      { outcome: 'exact', models: ['WX 4547 CK NORTH EDITION 1234567890'] },
    ],
    ['ODW4512/01 S/N 53310754', { outcome: 'exact', models: ['ODW4512/01'] }],
    ['ODW4512/01 99887766', { outcome: 'exact', models: ['ODW4512/01'] }],
    ['Aqualane 44 ODW4512/01', { outcome: 'exact', models: ['ODW4512/01'] }],
  ])('%j', check)
})

describe('one key at two brands leaves both open, until the brand is known', () => {
  test.each<[string, Expected, string?]>([
    ['QX200', { outcome: 'several', models: ['QX200', 'QX200'] }],
    ['QX200', { outcome: 'exact', models: ['QX200'] }, 'Brennick'],
    ['Ostrel QX200', { outcome: 'exact', models: ['QX200'] }],
    ['ODW4512/01', { outcome: 'none', models: [], agreement: 'differs' }, 'Lövane'],
  ])('%j', check)
})

describe('a sales name leaves open what it covers', () => {
  test.each<[string, Expected]>([
    ['Aqualane 52', { outcome: 'exact', models: ['ODW4520/02'] }],
    ['aqualane44', { outcome: 'several', models: ['ODW4512/01', 'ODW4512/02'] }],
    ['Finch 7', { outcome: 'exact', models: ['OWM7716/04'] }],
    ['Ostrel Finch 7', { outcome: 'exact', models: ['OWM7716/04'] }],
    ['Aqualane', { outcome: 'several', models: ['ODW4512/01', 'ODW4512/02', 'ODW4520/02'] }],
    ['Back 104', { outcome: 'near', models: ['LV 141-54 B'], agreement: 'confusable' }],
    ['Aqualne 52', { outcome: 'near', models: ['ODW4520/02'], agreement: 'differs' }],
  ])('%j', check)
})

describe('an incomplete number leaves open every model that holds it', () => {
  test.each<[string, Expected]>([
    ['ODW4512', { outcome: 'several', models: ['ODW4512/01', 'ODW4512/02'] }],
    ['ODW45', { outcome: 'several', models: ['ODW4512/01', 'ODW4512/02', 'ODW4520/02'] }],
    ['4520/02', { outcome: 'near', models: ['ODW4520/02'] }],
    ['716', { outcome: 'near', models: ['OWM7716/04'] }],
    [
      'WX4547',
      { outcome: 'several', models: ['WX4547/C', 'WX 4547 CK NORTH EDITION 1234567890', 'WX4547/Q'] },
    ],
    ['0DW4512', { outcome: 'several', models: ['ODW4512/01', 'ODW4512/02'], agreement: 'confusable' }],
    ['ODW4512 99887766', { outcome: 'several', models: ['ODW4512/01', 'ODW4512/02'] }],
    ['LOV99', { outcome: 'near', models: ['LÖV9911'], agreement: 'confusable' }],
  ])('%j', check)
})

describe('a question mark stands for one character: over the whole key, else its beginning, else anywhere', () => {
  test.each<[string, Expected]>([
    ['ODW451?/01', { outcome: 'near', models: ['ODW4512/01'] }],
    ['ODW45??/02', { outcome: 'several', models: ['ODW4512/02', 'ODW4520/02'] }],
    ['?DW4512', { outcome: 'several', models: ['ODW4512/01', 'ODW4512/02'] }],
    ['W?51', { outcome: 'several', models: ['ODW4512/01', 'ODW4512/02'] }],
    ['0DW451?/O1', { outcome: 'near', models: ['ODW4512/01'], agreement: 'confusable' }],
    ['53310754-0?', { outcome: 'several', models: ['53310754-06', '53310754-07'] }],
  ])('%j', check)
})

describe('where only lookalikes differ from one whole number, it is that one', () => {
  test.each<[string, Expected]>([
    ['0DW4512/O1', { outcome: 'near', models: ['ODW4512/01'], agreement: 'confusable' }],
    ['WX4547/O', { outcome: 'near', models: ['WX4547/Q'], agreement: 'confusable' }],
    ['S33IO754-06', { outcome: 'near', models: ['53310754-06'], agreement: 'confusable' }],
    ['LV 141-54 8', { outcome: 'near', models: ['LV 141-54 B'], agreement: 'confusable' }],
  ])('%j', check)
})

describe('where nothing agrees, the plausible near ones stay open and are marked', () => {
  test.each<[string, Expected]>([
    ['OWD4512/01', { outcome: 'near', models: ['ODW4512/01'], agreement: 'differs' }],
    ['ODW4512/03', { outcome: 'several', models: ['ODW4512/01', 'ODW4512/02'], agreement: 'differs' }],
    ['WX4547/X', { outcome: 'several', models: ['WX4547/C', 'WX4547/Q'], agreement: 'differs' }],
    ['Brennick ODW4512/01', { outcome: 'near', models: ['ODW4512/01'], agreement: 'differs' }],
    ['modl ODW 4512 /O1', { outcome: 'near', models: ['ODW4512/01'], agreement: 'differs' }],
    ['ODW4512/01 not filling', { outcome: 'near', models: ['ODW4512/01'], agreement: 'differs' }],
    ['ZZTOP99', { outcome: 'none', models: [], agreement: 'differs' }],
    ['ЖЖЖ', { outcome: 'none', models: [], agreement: 'differs' }],
    ['🙂🙂🙂 ODW4512/01', { outcome: 'exact', models: ['ODW4512/01'] }],
  ])('%j', check)
})

const refuse = (question: { text: string; brand?: string }, problem: object) =>
  expect(() => findOpenModels(index, question)).toThrow(
    expect.toSatisfy((thrown: unknown) => {
      expect(thrown).toBeInstanceOf(Refusal)
      expect((thrown as Refusal).problem).toEqual(problem)
      return true
    }),
  )

test.each(['', 'OD', '4-5', '4?????', '  ', '日本'])('%j is too short to look up', text =>
  refuse({ text }, { code: 'plate-text-too-short', typed: text, needed: 3 }),
)

test('a brand that nobody knows is refused with the nearest', () =>
  refuse(
    { text: 'ODW4512', brand: 'Bremick' },
    { code: 'brand-not-found', typed: 'Bremick', nearest: ['Brennick'] },
  ))

test('a short number that a slip left nothing alike of is found, beside one that looks likelier', () => {
  const open = findOpenModels(anIndex({ Korrel: { models: ['AB12', 'A1BK'] } }), { text: 'A1B2' })
  expect(open.models.map(({ modelNumber }) => modelNumber)).toEqual(['A1BK', 'AB12'])
  expect(open.agreement).toBe('differs')
})

test('numbers longer than a machine word are found, damaged or not', () => {
  const long = 'KR-4471-22-XA-900817-REV-3B-EXPORT-NORTH-2214'
  const longIndex = anIndex({ Korrel: { models: [long, 'KR-4471'] } })
  const open = (text: string) => findOpenModels(longIndex, { text })
  expect(open(long)).toMatchObject({ outcome: 'exact', models: [{ modelNumber: long }] })
  expect(open(long.replace('817', '871'))).toMatchObject({
    agreement: 'differs',
    models: [{ modelNumber: long }],
  })
  expect(open(long.replace('EXPORT', 'EXP?RT'))).toMatchObject({
    agreement: 'agrees',
    models: [{ modelNumber: long }],
  })
})

test('five thousand models that hold a text are all left open', () => {
  const numbers = Array.from({ length: 5000 }, (_, at) => `KR77-${String(at).padStart(4, '0')}`)
  const many = anIndex({ Korrel: { models: numbers } })
  const open = findOpenModels(many, { text: 'KR77' })
  expect(open.models.map(({ modelNumber }) => modelNumber)).toEqual(numbers)
})
