import { describe, expect, test } from 'vitest'
import { decideFit } from '../../../electron/fit-check/decide-fit.ts'
import type { ModelFacts } from '../../../electron/fit-check/part-dossier.ts'
import { asReadings } from '../../../electron/fit-check/read-question.ts'
import { wordAskChosen } from '../../../shared-schemas/word-ask-chosen.ts'
import { aDossier, aModel, aStatement } from '../../builders/fit-dossier.ts'
import { openTestShop } from '../../builders/open-test-shop.ts'
import { smallCatalogue } from '../../hosts/small-shop.ts'

/** 1: listed whenever made; 2: listed when made to 2014-05. */
const dossier = aDossier({ statements: [aStatement(1), aStatement(2, { made: { to: '2014-05' } })] })

const askOver = (models: readonly ModelFacts[]) => {
  const { ask, askChosen } = decideFit(dossier, models, asReadings({}))
  const readings = ask.flatMap<Reading>(({ reading, positions }) =>
    positions.length > 0 ? positions.map(at => at - 1) : [reading === 'made' ? ('made' as const) : 'other'],
  )
  return { readings, askChosen }
}

type Terms = [] | [1] | [2]
const modelsOf = (listed: Readonly<Record<string, Terms>>) =>
  Object.entries(listed).map(([key, terms], at) => aModel(key, { modelId: at + 1, terms }))

test('the reading that settles most appliances is named first', () => {
  const listed = modelsOf({ A: [2], B: [], C: [], D: [], E: [1], F: [1] })
  expect(askOver(listed)).toEqual({ readings: [0, 'made'], askChosen: 'fewest' })
  const dated = modelsOf({ A: [2], B: [2], C: [2], D: [2], E: [2], F: [] })
  expect(askOver(dated)).toEqual({ readings: ['made', 0], askChosen: 'fewest' })
})

describe('no set as small is expected to decide sooner, by trying every set in every order', () => {
  test.each(Array.from({ length: 150 }, (_, at) => at + 1))('models of seed %i', seed => {
    const models = drawModels(seed)
    const { readings, askChosen } = askOver(models)
    const best = tryAll(models)
    expect(readings).toHaveLength(best.size)
    if (best.size === 0) return
    expect(askChosen).toBe('fewest')
    expect(countReadings(rowsOf(models), readings)).toBeCloseTo(best.readings, 9)
  })
})

test('of sets too many to try it is said that a smaller one may do', () => {
  const models = Array.from({ length: 256 }, (_, at) => {
    const bits = at.toString(2).padStart(8, '0')
    const flipped = [...bits].map(bit => (bit === '0' ? '1' : '0')).join('')
    const isOdd = [...bits].filter(bit => bit === '1').length % 2 === 1
    return aModel(bits + flipped, { modelId: at + 1, terms: isOdd ? [1] : [] })
  })
  const { readings, askChosen } = askOver(models)
  expect(askChosen).toBe('greedy')
  expect(decidedBy(rowsOf(models), readings)).toBe(true)
})

test.each([
  [[{ reading: 'made', text: '' }], 'fewest', []],
  [
    [
      { reading: 'made', text: '' },
      { reading: 'serial', text: '' },
    ],
    'fewest',
    ['No fewer readings would do: every smaller choice was tried.'],
  ],
  [
    [{ reading: 'model-number', positions: [5, 6], text: '' }],
    'fewest',
    ['No fewer readings would do: every smaller choice was tried.'],
  ],
  [
    [{ reading: 'made', text: '' }],
    'greedy',
    ['Chosen one by one, the most telling first; fewer readings might do.'],
  ],
  [[], null, []],
] as const)('%j chosen as %s: %j', (ask, chosen, words) => {
  const asked = ask.map(one => ('positions' in one ? { ...one, positions: [...one.positions] } : { ...one }))
  expect(wordAskChosen(asked, chosen)).toEqual(words)
})

test('a fit answer, and each part in the list of what fits, says how its readings were chosen', async () => {
  const shop = await openTestShop(smallCatalogue)
  try {
    const asked = { model: 'QV-1042', part: '00480122' }
    const answer = await shop.answer('fit-check.judge-fit', asked)
    expect(answer).toMatchObject({ verdict: 'ask', askChosen: 'fewest' })
    expect(answer.ask.map(({ reading }) => reading).sort()).toEqual(['made', 'model-number'])
    const sure = await shop.answer('fit-check.judge-fit', { ...asked, model: 'QV-1042/A' })
    expect(sure).toMatchObject({ verdict: 'fits', ask: [], askChosen: null })
    const { families } = await shop.answer('fit-check.list-fitting-parts', { model: 'QV-1042' })
    const parts = families.flatMap(family => family.parts)
    expect(parts.map(part => [part.partNumber, part.askChosen])).toContainEqual(['00480122', 'fewest'])
  } finally {
    shop.close()
  }
})

type Reading = number | string
interface Row {
  readonly key: string
  readonly made: string
  readonly outcome: string
}

function drawModels(seed: number): ModelFacts[] {
  let state = seed * 2_654_435_761
  const draw = (below: number) => {
    state = (Math.imul(state, 1_103_515_245) + 12_345) >>> 0
    return (state >>> 16) % below
  }
  const keys = new Set(Array.from({ length: 6 }, () => Array.from({ length: 4 }, () => draw(3)).join('')))
  const terms: Terms[] = [[], [1], [2]]
  return modelsOf(Object.fromEntries([...keys].map(key => [`M${key}`, terms[draw(3)] ?? []])))
}

function rowsOf(models: readonly ModelFacts[]): Row[] {
  return models.flatMap(({ key, termsIds }) =>
    ['early', 'late'].map(made => ({
      key,
      made,
      outcome: termsIds.has(1) || (termsIds.has(2) && made === 'early') ? 'yes' : 'no',
    })),
  )
}

function outcomesByShown(rows: readonly Row[], readings: readonly Reading[]) {
  const shown = (row: Row) => readings.map(at => (typeof at === 'number' ? row.key[at] : row.made)).join()
  return [...Map.groupBy(rows, shown).values()].map(group => ({
    rows: group.length,
    isOpen: new Set(group.map(({ outcome }) => outcome)).size > 1,
  }))
}

function decidedBy(rows: readonly Row[], readings: readonly Reading[]): boolean {
  return outcomesByShown(rows, readings).every(({ isOpen }) => !isOpen)
}

/** How many readings a person makes on average who stops once it is decided. */
function countReadings(rows: readonly Row[], order: readonly Reading[]): number {
  return order.reduce<number>((sum, _, made) => {
    const open = outcomesByShown(rows, order.slice(0, made)).filter(({ isOpen }) => isOpen)
    return sum + open.reduce((count, group) => count + group.rows, 0) / rows.length
  }, 0)
}

/** Plate positions from left to right in one go, the date before or after them. */
function tryAll(models: readonly ModelFacts[]): { size: number; readings: number } {
  const rows = rowsOf(models)
  const sets = Array.from({ length: 2 ** 5 }, (_, bits) => [0, 1, 2, 3, 4].filter(at => bits & (1 << at)))
  const orders = sets.flatMap<Reading[]>(positions => [
    positions,
    ['made', ...positions],
    [...positions, 'made'],
  ])
  const deciding = orders.filter(order => decidedBy(rows, order))
  const size = Math.min(...deciding.map(order => order.length))
  const smallest = deciding.filter(order => order.length === size)
  return { size, readings: Math.min(...smallest.map(order => countReadings(rows, order))) }
}
