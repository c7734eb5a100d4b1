import { afterEach, beforeEach, expect, test } from 'vitest'
import type { GivenInput } from '../../../shared-schemas/index.ts'
import { openTestShop, type TestShop } from '../../builders/open-test-shop.ts'
import { smallCatalogue } from '../../builders/small-catalogue.ts'

let shop: TestShop
let today: Date
const on = (day: string) => {
  today = new Date(`${day}T09:00:00Z`)
}
beforeEach(async () => {
  on('2026-01-05')
  shop = await openTestShop(smallCatalogue, { now: () => today })
})
afterEach(() => shop.close())

const lock = { model: '4821-07', brand: 'Brennick', part: '1E5' }
const header = smallCatalogue['fitments.csv'].split('\n')[0]
const readHistory = (asOf?: string) =>
  shop.answer('fit-check.read-history', asOf === undefined ? lock : { ...lock, asOf })

/** A year of one door lock: listed, listed otherwise, fitted, returned, settled, forbidden. */
async function liveThrough() {
  on('2026-02-01')
  await shop.load({ 'fitments.csv': smallCatalogue['fitments.csv'].replace('left,2,', 'left,1,') })
  on('2026-03-01')
  await shop.answer('fit-check.record-fit', { ...lock, kind: 'confirmed', job: 'J1', initials: 'AB' })
  on('2026-04-01')
  const { recordId } = await shop.answer('fit-check.record-fit', {
    ...lock,
    kind: 'wrong-fit',
    reason: 'hook bent the other way',
    initials: 'CD',
  })
  on('2026-05-01')
  await shop.answer('fit-check.settle-wrong-fit', { recordId, how: 'new hook fitted', initials: 'EF' })
  on('2026-06-01')
  await shop.load({ 'fitments.csv': `${header}\nincludes,,1E5,Brennick,4821-07,,,,,,,Second list\n` })
  on('2026-07-01')
  await shop.answer('fit-check.add-exclusion', { ...lock, reason: 'hook breaks', initials: 'AB' })
  return recordId
}

test('what was said and recorded stands in order of time, each with its source', async () => {
  const recordId = await liveThrough()
  const { events, model, partNumber } = await readHistory()
  expect([model.brand, model.modelNumber, partNumber]).toEqual(['Brennick', '4821-07', '1E5'])
  const conditions = 'made 2010-01 to 2011-06, serial 100 to 2000, position left'
  expect(events.map(({ at, ...event }) => ({ day: at?.slice(0, 10), ...event }))).toEqual([
    {
      day: '2026-01-05',
      kind: 'said',
      text: `1E5: listed, ${conditions}, quantity 2.`,
      source: 'Counter notes',
    },
    {
      day: '2026-02-01',
      kind: 'withdrawn',
      text: `No longer said: 1E5: listed, ${conditions}, quantity 2.`,
      source: 'Counter notes',
    },
    {
      day: '2026-02-01',
      kind: 'said',
      text: `1E5: listed, ${conditions}, quantity 1.`,
      source: 'Counter notes',
    },
    {
      day: '2026-03-01',
      kind: 'confirmed',
      text: '1E5 was fitted and confirmed, job J1.',
      source: 'shop record, AB 2026-03-01',
    },
    {
      day: '2026-04-01',
      kind: 'wrong-fit',
      text: '1E5 came back as a wrong fit: hook bent the other way.',
      source: 'shop record, CD 2026-04-01',
    },
    {
      day: '2026-05-01',
      kind: 'settled',
      text: 'The return of 1E5 was settled: new hook fitted.',
      source: 'shop record, EF 2026-05-01',
      recordId,
    },
    { day: '2026-06-01', kind: 'said', text: '1E5: listed.', source: 'Second list' },
    {
      day: '2026-07-01',
      kind: 'said',
      text: '1E5: must not be used here: hook breaks.',
      source: 'shop correction, AB 2026-07-01',
    },
  ])
})

test('a return that waits is named, so that it can be settled from here', async () => {
  const { recordId } = await shop.answer('fit-check.record-fit', {
    ...lock,
    kind: 'wrong-fit',
    job: 'J4',
    reason: 'Too long.',
    initials: 'CD',
  })
  const { events } = await readHistory()
  expect(events.at(-1)).toMatchObject({
    kind: 'wrong-fit',
    text: '1E5 came back as a wrong fit, job J4: Too long.',
    recordId,
  })
})

/** The verdict of each day, without and with the date and serial of the appliance. */
const days: readonly (readonly [day: string, verdict: string, readVerdict: string])[] = [
  ['2026-01-04', 'no-record', 'no-record'],
  ['2026-01-05', 'ask', 'fits'],
  ['2026-02-01', 'ask', 'fits'],
  ['2026-05-31', 'ask', 'fits'],
  ['2026-06-01', 'fits', 'fits'],
  ['2026-06-30', 'fits', 'fits'],
  ['2026-07-01', 'does-not-fit', 'does-not-fit'],
]

test('the verdict of a day is what the catalogue said on that day', async () => {
  await liveThrough()
  for (const [asOf, verdict, readVerdict] of days) {
    const ask = (question: Omit<GivenInput<'fit-check.read-history'>, 'part' | 'model'>) =>
      shop.answer('fit-check.read-history', { ...lock, ...question, asOf })
    expect((await ask({})).asOf, asOf).toMatchObject({ date: asOf, verdict })
    expect((await ask({ made: '2010-06', serial: '150' })).asOf, asOf).toMatchObject({ verdict: readVerdict })
  }
})

test('today its verdict and reasons are those of the counter, notes of records aside', async () => {
  await liveThrough()
  for (const part of ['1E5', '0048-0121', '0048-0123', 'PX 7'])
    for (const model of ['4821-07', 'OW 4512/01', 'OW 4530/01']) {
      const { asOf } = await shop.answer('fit-check.read-history', { model, part, asOf: '2026-07-01' })
      const { verdict, reasons } = await shop.answer('fit-check.judge-fit', { model, part })
      expect(asOf).toEqual({
        date: '2026-07-01',
        verdict,
        reasons: reasons.filter(({ code }) => code !== 'confirmed'),
      })
    }
})

test('a number that is nobody’s, or a day that is none, is refused', async () => {
  expect(await shop.ask('fit-check.read-history', { model: 'OW 4512', part: '1E5' })).toMatchObject({
    problem: { code: 'model-not-settled', open: 2 },
  })
  expect(await shop.ask('fit-check.read-history', { ...lock, part: 'none' })).toMatchObject({
    problem: { code: 'part-not-found' },
  })
  expect(await shop.ask('fit-check.read-history', { ...lock, asOf: '2026-02-30' })).toMatchObject({
    problem: { code: 'malformed', where: 'asOf' },
  })
})
