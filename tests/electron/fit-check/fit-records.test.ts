import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import type { FitAnswer } from '../../../shared-schemas/fit-check.ts'
import type { GivenInput } from '../../../shared-schemas/index.ts'
import { openTestShop, type TestShop } from '../../builders/open-test-shop.ts'
import { smallCatalogue, withRows } from '../../builders/small-catalogue.ts'

let shop: TestShop
let today: Date
beforeEach(async () => {
  today = new Date('2026-11-23T09:00:00Z')
  shop = await openTestShop(withRows('parts.csv', 'PX 9,drain-pump,Tessory,pattern,Pump,,'), {
    now: () => today,
  })
})
afterEach(() => shop.close())

/** A pump that its family is listed for, and nothing is measured of. */
const pump = { model: 'OW 4512/01', brand: 'Ostrel', part: 'PX 9' }
const wrongFit = { ...pump, kind: 'wrong-fit', reason: 'spigot too wide', initials: 'AB' } as const

const judge = (question: GivenInput<'fit-check.judge-fit'> = pump) =>
  shop.answer('fit-check.judge-fit', question)
const returnsIn = ({ cautions }: Pick<FitAnswer, 'cautions'>) =>
  cautions.filter(({ code }) => code === 'wrong-fit-returned')

describe('a wrong-fit return', () => {
  test('stands as a caution on every later yes, with its day, reason and initials, and leaves the verdict', async () => {
    const before = await judge()
    expect(before.verdict).toBe('fits')
    const { recordId } = await shop.answer('fit-check.record-fit', wrongFit)
    const after = await judge()
    expect(returnsIn(after)).toEqual([
      {
        code: 'wrong-fit-returned',
        recordId,
        text: 'PX 9 came back as a wrong fit from Ostrel OW 4512/01 on 2026-11-23 (AB): spigot too wide. Compare it with the old part before it is sold, and settle the return.',
      },
    ])
    expect({
      ...after,
      cautions: after.cautions.filter(({ code }) => code !== 'wrong-fit-returned'),
    }).toEqual(before)
  })

  test('stands in the list of what fits, at the part that came back and no other', async () => {
    await shop.answer('fit-check.record-fit', wrongFit)
    const { families } = await shop.answer('fit-check.list-fitting-parts', pump)
    const warned = families.flatMap(({ parts }) => parts).filter(part => returnsIn(part).length > 0)
    expect(warned.map(({ partNumber }) => partNumber)).toEqual(['PX 9'])
  })

  test('stands on a yes over several open models of which it is one', async () => {
    await shop.answer('fit-check.record-fit', wrongFit)
    const answer = await judge({ ...pump, model: 'OW 4512' })
    expect(answer).toMatchObject({ verdict: 'fits', models: { open: 2 } })
    expect(returnsIn(answer)).toHaveLength(1)
  })

  test('says nothing of another model', async () => {
    await shop.answer('fit-check.record-fit', wrongFit)
    expect(returnsIn(await judge({ ...pump, model: 'OW 4512/02' }))).toEqual([])
  })

  test('of a number that replaces the one asked for stands too', async () => {
    await shop.answer('fit-check.record-fit', { ...wrongFit, part: '0048-0122' })
    const answer = await judge({ ...pump, part: '0048-0121', volts: '230', measured: { watts: '30' } })
    expect(answer).toMatchObject({ verdict: 'fits-with-changes', part: { current: '0048-0122' } })
    expect(returnsIn(answer)).toHaveLength(1)
  })

  test('is settled once, with how and by whom; then it is no longer shown', async () => {
    const { recordId } = await shop.answer('fit-check.record-fit', wrongFit)
    const settle = { recordId, how: 'wrong part in the bag', initials: 'CD' }
    await shop.answer('fit-check.settle-wrong-fit', settle)
    expect(returnsIn(await judge())).toEqual([])
    expect(await shop.ask('fit-check.settle-wrong-fit', settle)).toEqual({
      ok: false,
      problem: { code: 'record-not-open', recordId, why: 'settled' },
    })
  })

  test('the newest stands first, and settling one leaves the other', async () => {
    const first = await shop.answer('fit-check.record-fit', wrongFit)
    today = new Date('2026-11-24T09:00:00Z')
    const second = await shop.answer('fit-check.record-fit', { ...wrongFit, reason: 'leaks', job: 'J9' })
    expect(returnsIn(await judge()).map(({ recordId }) => recordId)).toEqual([
      second.recordId,
      first.recordId,
    ])
    await shop.answer('fit-check.settle-wrong-fit', {
      recordId: second.recordId,
      how: 'hose clip',
      initials: 'CD',
    })
    expect(returnsIn(await judge()).map(({ recordId }) => recordId)).toEqual([first.recordId])
  })

  test('a no stays a no without it', async () => {
    await shop.answer('fit-check.record-fit', { ...wrongFit, part: '1E5' })
    const answer = await judge({ ...pump, part: '1E5' })
    expect(answer.verdict).toBe('no-record')
    expect(returnsIn(answer)).toEqual([])
  })
})

test('a confirmed fit is a note with its source, and never a verdict', async () => {
  const [before, beforeOfNone] = [await judge(), await judge({ ...pump, part: '1E5' })]
  await shop.answer('fit-check.record-fit', { ...pump, kind: 'confirmed', job: 'J7', initials: 'AB' })
  today = new Date('2026-12-01T09:00:00Z')
  await shop.answer('fit-check.record-fit', { ...pump, kind: 'confirmed', job: 'J8', initials: 'EF' })
  await shop.answer('fit-check.record-fit', {
    ...pump,
    part: '1E5',
    kind: 'confirmed',
    job: 'J9',
    initials: 'AB',
  })
  const note = {
    code: 'confirmed',
    text: 'PX 9 was fitted and confirmed in Ostrel OW 4512/01 on 2026-12-01, job J8, 2 times in all.',
    source: 'shop record, EF 2026-12-01',
  }
  expect(await judge()).toEqual({ ...before, reasons: [...before.reasons, note] })
  const ofNone = await judge({ ...pump, part: '1E5' })
  expect(ofNone.verdict).toBe(beforeOfNone.verdict)
  expect(ofNone.reasons.at(-1)?.code).toBe('confirmed')
})

describe('a correction', () => {
  const exclusion = { ...pump, reason: 'fouls the drum', initials: 'AB' }

  test('forbids the part there from then on, under its own source', async () => {
    const { catalogueVersion } = await shop.answer('catalogue.read-summary', {})
    expect(await shop.answer('fit-check.add-exclusion', exclusion)).toEqual({
      source: 'shop correction, AB 2026-11-23',
      isNew: true,
    })
    expect(await judge()).toMatchObject({
      verdict: 'does-not-fit',
      reasons: [{ code: 'excluded-part', source: 'shop correction, AB 2026-11-23' }],
    })
    expect((await judge({ ...pump, model: 'OW 4512/02' })).verdict).toBe('fits')
    expect((await shop.answer('catalogue.read-summary', {})).catalogueVersion).toBe(catalogueVersion + 1)
  })

  test("stays when the suppliers' lists are loaded again", async () => {
    await shop.answer('fit-check.add-exclusion', exclusion)
    await shop.load(smallCatalogue)
    await shop.load({ 'fitments.csv': smallCatalogue['fitments.csv'].replace('left,2,', 'left,1,') })
    expect((await judge()).verdict).toBe('does-not-fit')
  })

  test('said again the same day is nothing new', async () => {
    await shop.answer('fit-check.add-exclusion', exclusion)
    const { catalogueVersion } = await shop.answer('catalogue.read-summary', {})
    expect(await shop.answer('fit-check.add-exclusion', exclusion)).toMatchObject({ isNew: false })
    expect((await shop.answer('catalogue.read-summary', {})).catalogueVersion).toBe(catalogueVersion)
  })

  test('of one place forbids only that place', async () => {
    const dryer = { model: '4821-07', brand: 'Brennick', part: '1E5', made: '2010-06', serial: '150' }
    const { model, brand, part } = dryer
    expect((await judge(dryer)).verdict).toBe('fits')
    const inPlace = { model, brand, part, reason: 'bent hook', initials: 'AB' }
    await shop.answer('fit-check.add-exclusion', { ...inPlace, position: 'right' })
    expect((await judge(dryer)).verdict).toBe('fits')
    await shop.answer('fit-check.add-exclusion', { ...inPlace, position: 'left' })
    expect((await judge(dryer)).verdict).toBe('does-not-fit')
  })
})

describe('a correction that is withdrawn', () => {
  const exclusion = { ...pump, reason: 'fouls the drum', initials: 'AB' }
  const source = 'shop correction, AB 2026-11-23'
  const withdrawal = { ...pump, source, reason: 'it was the old bracket', initials: 'CD' }
  const historyOf = async () => (await shop.answer('fit-check.read-history', pump)).events
  const later = (day: string) => {
    today = new Date(`${day}T09:00:00Z`)
  }

  test('no longer forbids the part, and what was said, by whom and why stays in the history', async () => {
    const [verdict, events] = [await judge(), await historyOf()]
    await shop.answer('fit-check.add-exclusion', exclusion)
    later('2026-12-01')
    expect(await shop.answer('fit-check.withdraw-correction', withdrawal)).toEqual({ source })
    expect(await judge()).toEqual(verdict)
    expect(await historyOf()).toEqual([
      ...events,
      {
        at: '2026-11-23T09:00:00.000Z',
        kind: 'said',
        text: 'PX 9: must not be used here: fouls the drum.',
        source,
      },
      {
        at: '2026-12-01T09:00:00.000Z',
        kind: 'withdrawn',
        text: 'No longer said: PX 9: must not be used here; withdrawn by CD: it was the old bracket.',
        source,
      },
    ])
    const { asOf } = await shop.answer('fit-check.read-history', { ...pump, asOf: '2026-11-30' })
    expect(asOf?.verdict).toBe('does-not-fit')
  })

  test('is refused a second time, and changes nothing then', async () => {
    await shop.answer('fit-check.add-exclusion', exclusion)
    later('2026-12-01')
    await shop.answer('fit-check.withdraw-correction', withdrawal)
    const events = await historyOf()
    const { catalogueVersion } = await shop.answer('catalogue.read-summary', {})
    expect(await shop.ask('fit-check.withdraw-correction', withdrawal)).toMatchObject({
      ok: false,
      problem: { code: 'correction-not-standing', part: 'PX 9', source },
    })
    expect(await historyOf()).toEqual(events)
    expect((await shop.answer('catalogue.read-summary', {})).catalogueVersion).toBe(catalogueVersion)
  })

  test('leaves what another one forbids, and may be said again', async () => {
    await shop.answer('fit-check.add-exclusion', exclusion)
    await shop.answer('fit-check.add-exclusion', { ...exclusion, initials: 'EF' })
    await shop.answer('fit-check.withdraw-correction', withdrawal)
    expect(await judge()).toMatchObject({
      verdict: 'does-not-fit',
      reasons: [{ source: 'shop correction, EF 2026-11-23' }],
    })
    await shop.answer('fit-check.withdraw-correction', {
      ...withdrawal,
      source: 'shop correction, EF 2026-11-23',
    })
    expect((await judge()).verdict).toBe('fits')
    expect(await shop.answer('fit-check.add-exclusion', exclusion)).toMatchObject({ isNew: true })
    expect((await judge()).verdict).toBe('does-not-fit')
  })

  test('in every place that it forbids', async () => {
    const dryer = { model: '4821-07', brand: 'Brennick', part: '1E5' }
    for (const position of ['left', 'right'])
      await shop.answer('fit-check.add-exclusion', { ...exclusion, ...dryer, position })
    await shop.answer('fit-check.withdraw-correction', { ...withdrawal, ...dryer })
    expect((await judge({ ...dryer, made: '2010-06', serial: '150' })).verdict).toBe('fits')
  })

  test("is no supplier's word, even one under a name that reads alike", async () => {
    const [header = ''] = smallCatalogue['fitments.csv'].split('\n')
    await shop.load({ 'fitments.csv': `${header}\nexcludes,,PX 9,Ostrel,OW 4512/01,,,,,,,"${source}"\n` })
    expect((await judge()).reasons[0]?.source).toBe(source)
    expect(await shop.ask('fit-check.withdraw-correction', withdrawal)).toMatchObject({
      ok: false,
      problem: { code: 'correction-not-standing' },
    })
    expect((await judge()).verdict).toBe('does-not-fit')
  })
})

describe('what is not recorded', () => {
  const check = async (name: Asked['name'], input: unknown, problem: object) => {
    const before = await shop.answer('fit-check.read-history', pump)
    // The input is wrong on purpose, so that it has no type of its own.
    const reply = await shop.ask(name, input as GivenInput<typeof name>)
    expect(reply).toMatchObject({ ok: false, problem })
    expect(await shop.answer('fit-check.read-history', pump)).toEqual(before)
  }
  interface Asked {
    readonly name:
      | 'fit-check.record-fit'
      | 'fit-check.settle-wrong-fit'
      | 'fit-check.add-exclusion'
      | 'fit-check.withdraw-correction'
  }
  const exclusion = { ...pump, reason: 'fouls the drum', initials: 'AB' }
  test.each<[string, Asked['name'], unknown, object]>([
    [
      'a number that several models have',
      'fit-check.record-fit',
      { ...wrongFit, model: 'OW 4512' },
      {
        code: 'model-not-settled',
        typed: 'OW 4512',
        open: 2,
        first: ['Ostrel OW 4512/01', 'Ostrel OW 4512/02'],
      },
    ],
    [
      'a number that only looks alike',
      'fit-check.record-fit',
      { ...wrongFit, model: '0W 4512/01' },
      { code: 'model-not-settled', first: ['Ostrel OW 4512/01'] },
    ],
    [
      'a number that nobody has',
      'fit-check.add-exclusion',
      { ...exclusion, model: 'ZZ 999999' },
      { code: 'model-not-settled', open: 0, first: [] },
    ],
    [
      'a part that nobody has',
      'fit-check.record-fit',
      { ...wrongFit, part: '0048-0199' },
      { code: 'part-not-found', typed: '0048-0199' },
    ],
    [
      'an exclusion of a part that nobody has',
      'fit-check.add-exclusion',
      { ...exclusion, part: 'no such part' },
      { code: 'part-not-found', typed: 'no such part' },
    ],
    [
      'a return without its reason',
      'fit-check.record-fit',
      { ...wrongFit, reason: ' ' },
      { code: 'malformed', where: 'reason' },
    ],
    [
      'a confirmed fit without its job',
      'fit-check.record-fit',
      { ...pump, kind: 'confirmed', initials: 'AB' },
      { code: 'malformed', where: 'job' },
    ],
    [
      'a record that nobody signs',
      'fit-check.record-fit',
      { ...wrongFit, initials: '' },
      { code: 'malformed', where: 'initials' },
    ],
    [
      'an exclusion that nobody signs',
      'fit-check.add-exclusion',
      { ...exclusion, initials: '  ' },
      { code: 'malformed', where: 'initials' },
    ],
    [
      'the withdrawal of a correction that nobody made',
      'fit-check.withdraw-correction',
      { ...exclusion, source: 'shop correction, AB 2026-11-23' },
      { code: 'correction-not-standing', source: 'shop correction, AB 2026-11-23' },
    ],
    [
      "the withdrawal of a supplier's word",
      'fit-check.withdraw-correction',
      { ...exclusion, source: 'Counter notes' },
      { code: 'correction-not-standing', source: 'Counter notes' },
    ],
    [
      'a withdrawal without its reason',
      'fit-check.withdraw-correction',
      { ...exclusion, source: 'shop correction, AB 2026-11-23', reason: ' ' },
      { code: 'malformed', where: 'reason' },
    ],
    [
      'the end of a return that was never recorded',
      'fit-check.settle-wrong-fit',
      { recordId: 'none', how: 'found', initials: 'AB' },
      { code: 'record-not-found', recordId: 'none' },
    ],
    [
      'the end of a return without how',
      'fit-check.settle-wrong-fit',
      { recordId: 'none', how: '', initials: 'AB' },
      { code: 'malformed', where: 'how' },
    ],
  ])('%s', (_title, name, input, problem) => check(name, input, problem))

  test('the end of a fit that was confirmed', async () => {
    const { recordId } = await shop.answer('fit-check.record-fit', {
      ...pump,
      kind: 'confirmed',
      job: 'J7',
      initials: 'AB',
    })
    await check(
      'fit-check.settle-wrong-fit',
      { recordId, how: 'no need', initials: 'AB' },
      { code: 'record-not-open', recordId, why: 'confirmed' },
    )
  })
})
