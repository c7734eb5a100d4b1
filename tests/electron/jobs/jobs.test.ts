import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import type { GivenInput, Output } from '../../../shared-schemas/index.ts'
import { openTestShop, type TestShop } from '../../builders/open-test-shop.ts'
import { orderShop } from '../../builders/order-shop.ts'
import { refusalOf } from '../../builders/refusal-of.ts'

let shop: TestShop
beforeEach(async () => {
  shop = await openTestShop(orderShop)
})
afterEach(() => shop.close())

const facts = { model: 'QV-1042/A', van: 'van1', symptom: 'water stays in', customer: 'card 17' }
const open = (more: Partial<GivenInput<'jobs.open-job'>> = {}) =>
  shop.answer('jobs.open-job', { job: 'J-1', ...facts, ...more })
const take = (more: Partial<GivenInput<'jobs.take-part'>> = {}) =>
  shop.answer('jobs.take-part', { job: 'J-1', part: 'P-100', ...more })
const fit = (quantity = 1) => shop.answer('jobs.mark-fitted', { job: 'J-1', part: 'P-100', quantity })
const end = (more: Partial<GivenInput<'jobs.end-visit'>> = {}) =>
  shop.ask('jobs.end-visit', { job: 'J-1', outcome: 'finished', initials: 'AB', ...more })
const ended = async (more: Partial<GivenInput<'jobs.end-visit'>> = {}) => {
  const reply = await end(more)
  if (!reply.ok) throw new Error(reply.problem.code)
  return reply.value
}
async function onHand(location: string): Promise<Record<string, number>> {
  const { rows } = await shop.answer('stock-ledger.list-on-hand', { location })
  return Object.fromEntries(rows.map(({ partNumber, quantity }) => [partNumber, quantity]))
}
const countsOf = ({ parts }: Output<'jobs.read-job'>) =>
  parts.map(({ partNumber, kept, taken, broughtBack, fitted, inHand }) => [
    ...[partNumber, kept, taken, broughtBack, fitted, inHand],
  ])

describe('a job', () => {
  test('is opened with what the plate says, and the look-up answers', async () => {
    const job = await open()
    expect(job).toMatchObject({
      ...{ job: 'J-1', date: '2026-11-23', van: 'VAN1', customer: 'card 17', state: 'open' },
      models: { outcome: 'exact', open: 1, settled: { modelNumber: 'QV-1042/A' } },
      openedOn: ['test-counter'],
    })
  })

  test('may have an incomplete number, which is shown for what it leaves open', async () => {
    const { models, model } = await open({ model: 'QV-1042/?' })
    expect(model).toBe('QV-1042/?')
    expect(models).toMatchObject({ open: 2, settled: null })
    expect(models?.first).toEqual(['Quorvane QV-1042/A', 'Quorvane QV-1042/B'])
  })

  test('may have no number yet, or one of a brand that nobody has loaded', async () => {
    expect((await open({ model: '' })).models).toBeNull()
    expect((await open({ job: 'J-2', brand: 'Unheard' })).models).toBeNull()
  })

  test('without a number is given one of its day, and no two the same', async () => {
    const numbers = new Set<string>()
    for (let made = 0; made < 50; made++) numbers.add((await shop.answer('jobs.open-job', facts)).job)
    expect(numbers.size).toBe(50)
    for (const number of numbers) expect(number).toMatch(/^261123-[ACEFHJKMNPRTUVWXY3479]{4}$/)
  })

  test('is not opened twice under one number', async () => {
    await open()
    expect(await refusalOf(shop.ask('jobs.open-job', { job: 'j-1', ...facts }))).toEqual({
      code: 'job-exists',
      job: 'J-1',
    })
  })

  test('that is not there is refused', async () => {
    expect(await refusalOf(shop.ask('jobs.read-job', { job: 'J-9' }))).toEqual({
      code: 'job-not-found',
      typed: 'J-9',
    })
  })

  test('whose facts are written anew has those, and what is left out is no longer known', async () => {
    await open()
    const changed = await shop.answer('jobs.change-job', { job: 'J-1', model: 'QV-1042/B', symptom: 'leaks' })
    expect(changed).toMatchObject({ model: 'QV-1042/B', symptom: 'leaks', openedOn: ['test-counter'] })
    expect(changed.customer).toBeUndefined()
    expect(changed.van).toBeUndefined()
  })
})

describe('what a job needs', () => {
  const need = (more: Partial<GivenInput<'jobs.need-part'>>) =>
    shop.ask('jobs.need-part', { job: 'J-1', ...more })
  const needsOf = async () =>
    (await shop.answer('jobs.read-job', { job: 'J-1' })).needs.map(
      ({ family, partNumber, quantity, isMet }) => [...[family, partNumber, quantity, isMet]],
    )

  test('is a family or a part, changed and struck off by a further word', async () => {
    await open()
    await need({ family: 'pump' })
    await need({ part: 'L-200', quantity: 2 })
    expect(await needsOf()).toEqual([
      ['pump', null, 1, false],
      ['lock', 'L-200', 2, false],
    ])
    await need({ part: 'L-200', quantity: 1 })
    await need({ family: 'pump', quantity: 0 })
    expect(await needsOf()).toEqual([['lock', 'L-200', 1, false]])
  })

  test('is met by what was taken and not brought back', async () => {
    await open()
    await need({ family: 'pump' })
    await take()
    expect(await needsOf()).toEqual([['pump', null, 1, true]])
    await shop.answer('jobs.bring-back', { job: 'J-1', part: 'P-100' })
    expect(await needsOf()).toEqual([['pump', null, 1, false]])
  })

  test('is one of the two, and known', async () => {
    await open()
    expect(await refusalOf(need({}))).toEqual({ code: 'part-or-family', both: false })
    expect(await refusalOf(need({ part: 'P-100', family: 'pump' }))).toEqual({
      code: 'part-or-family',
      both: true,
    })
    expect(await refusalOf(need({ family: 'pumps' }))).toEqual({ code: 'family-not-found', typed: 'pumps' })
    expect(await refusalOf(need({ part: 'X-1' }))).toMatchObject({ code: 'part-not-found' })
  })
})

describe('the parts of a job', () => {
  test('are taken from its van, fitted or brought back, each by the ledger', async () => {
    await open()
    const taken = await take()
    expect(taken.movement).toMatchObject({ from: 'VAN1', to: 'job', kind: 'issue', reference: 'J-1' })
    await take({ from: 'SHOP', quantity: 2 })
    await fit()
    const back = await shop.answer('jobs.bring-back', { job: 'J-1', part: 'P-100', quantity: 2 })
    // The last of it came off the shelf, and goes back there.
    expect(back.movement).toMatchObject({ from: 'job', to: 'SHOP', kind: 'return', reference: 'J-1' })
    expect(countsOf(back.job)).toEqual([['P-100', 0, 3, 2, 1, 0]])
    expect(await onHand('SHOP')).toMatchObject({ 'P-100': 3 })
    expect((await onHand('VAN1'))['P-100']).toBeUndefined()
  })

  test('carry the verdict for the appliance on the plate', async () => {
    await open({ model: 'QV-1042/B', made: '2018' })
    const { job } = await take()
    expect(job.parts[0]).toMatchObject({ partNumber: 'P-100', verdict: 'does-not-fit' })
  })

  test('that are kept for the job are taken by it, and stand among its parts before', async () => {
    await open()
    await shop.answer('stock-ledger.reserve-part', {
      ...{ part: 'P-100', location: 'SHOP', quantity: 3, heldFor: 'job', reference: 'J-1' },
    })
    expect(countsOf(await shop.answer('jobs.read-job', { job: 'J-1' }))).toEqual([['P-100', 3, 0, 0, 0, 0]])
    const { job } = await take({ from: 'SHOP' })
    expect(countsOf(job)).toEqual([['P-100', 2, 1, 0, 0, 1]])
  })

  test('are no more than were taken: neither fitted nor brought back', async () => {
    await open()
    await take()
    const tooMany = { code: 'not-in-hand', job: 'J-1', part: 'P-100', inHand: 1, wanted: 2 }
    const two = { job: 'J-1', part: 'P-100', quantity: 2 }
    expect(await refusalOf(shop.ask('jobs.mark-fitted', two))).toEqual(tooMany)
    expect(await refusalOf(shop.ask('jobs.bring-back', two))).toEqual(tooMany)
    expect(await refusalOf(shop.ask('jobs.mark-fitted', { ...two, quantity: -1 }))).toEqual({
      code: 'not-fitted',
      job: 'J-1',
      part: 'P-100',
      fitted: 0,
    })
  })

  test('that the van does not have by the book are taken only if it is said that they were', async () => {
    await open()
    expect(await refusalOf(shop.ask('jobs.take-part', { job: 'J-1', part: 'H-1' }))).toMatchObject({
      code: 'not-enough-on-hand',
      onHand: 0,
    })
    expect((await take({ part: 'H-1', usedBeforeBooked: true })).movement.usedBeforeBooked).toBe(true)
  })

  test('come from a van that is named, where the job names none', async () => {
    await open({ van: undefined })
    expect(await refusalOf(shop.ask('jobs.take-part', { job: 'J-1', part: 'P-100' }))).toEqual({
      code: 'job-without-van',
      job: 'J-1',
    })
  })

  test('whose taking was taken back in the ledger were never taken', async () => {
    await open()
    const { movement } = await take()
    await shop.answer('stock-ledger.reverse-movement', {
      ...{ movementId: movement.movementId, reason: 'wrong scan' },
    })
    const job = await shop.answer('jobs.read-job', { job: 'J-1' })
    expect(job.parts).toEqual([])
  })

  test('that were marked as fitted by mistake are in hand again', async () => {
    await open()
    await take()
    await fit()
    expect(countsOf(await fit(-1))).toEqual([['P-100', 0, 1, 0, 0, 1]])
  })
})

describe('a visit', () => {
  test('that finishes the job frees what is kept, books what goes back, and confirms what was fitted', async () => {
    await open()
    await take()
    await take({ from: 'SHOP', part: 'S-1', quantity: 2 })
    await fit()
    await shop.answer('stock-ledger.reserve-part', {
      ...{ part: 'P-100', location: 'SHOP', quantity: 1, heldFor: 'job', reference: 'J-1' },
    })
    const done = await ended({ cause: 'impeller broken', back: [{ part: 'S-1', quantity: 2, to: 'SHOP' }] })
    expect(done).toMatchObject({ released: 1, confirmed: ['P-100'], notConfirmed: [] })
    expect(done.job).toMatchObject({ state: 'finished', finishedFirstVisit: true, reservations: [] })
    expect(await onHand('SHOP')).toMatchObject({ 'P-100': 3, 'S-1': 4 })
    const answer = await shop.answer('fit-check.judge-fit', { model: 'QV-1042/A', part: 'P-100' })
    expect(answer.reasons.map(({ text }) => text).join(' ')).toContain('fitted and confirmed')
    expect(answer.reasons.map(({ text }) => text).join(' ')).toContain('job J-1')
  })

  test('that would leave pieces in hand does not finish it, and nothing is booked', async () => {
    await open()
    await take()
    await take({ from: 'SHOP' })
    const before = await shop.answer('stock-ledger.list-on-hand', {})
    expect(await refusalOf(end({ back: [{ part: 'P-100', quantity: 1, to: 'VAN1' }] }))).toEqual({
      code: 'parts-left-in-hand',
      job: 'J-1',
      parts: [{ partNumber: 'P-100', quantity: 1 }],
    })
    expect(await refusalOf(end({ back: [{ part: 'P-100', quantity: 3, to: 'VAN1' }] }))).toMatchObject({
      code: 'not-in-hand',
    })
    expect(await shop.answer('stock-ledger.list-on-hand', {})).toEqual(before)
  })

  test('that does not finish the job says why, and leaves what is in hand in hand', async () => {
    await open()
    await take()
    expect(await refusalOf(end({ outcome: 'not-finished' }))).toEqual({ code: 'why-needed', job: 'J-1' })
    const first = await ended({ outcome: 'not-finished', why: 'wrong-part' })
    expect(first.job).toMatchObject({ state: 'open', finishedFirstVisit: null })
    await fit()
    expect((await ended()).job).toMatchObject({ state: 'finished', finishedFirstVisit: false })
  })

  test('whose job has no settled model confirms nothing, and says of which parts', async () => {
    await open({ model: 'QV-1042/?' })
    await take()
    await fit()
    expect(await ended()).toMatchObject({ confirmed: [], notConfirmed: ['P-100'] })
  })

  test('that gives the job up ends it unfinished, and confirms nothing', async () => {
    await open()
    await take()
    await fit()
    const done = await ended({ outcome: 'given-up', why: 'beyond-repair' })
    expect(done).toMatchObject({ confirmed: [], notConfirmed: [] })
    expect(done.job).toMatchObject({ state: 'given-up', finishedFirstVisit: false })
  })

  test('by mistake is opened again, and does not count as a visit', async () => {
    await open()
    await ended()
    expect(await refusalOf(shop.ask('jobs.take-part', { job: 'J-1', part: 'P-100' }))).toEqual({
      code: 'job-ended',
      job: 'J-1',
      state: 'finished',
    })
    expect(await shop.answer('jobs.reopen-job', { job: 'J-1' })).toMatchObject({ state: 'open' })
    expect(await refusalOf(shop.ask('jobs.reopen-job', { job: 'J-1' }))).toEqual({
      code: 'job-open',
      job: 'J-1',
    })
    expect((await ended()).job).toMatchObject({ state: 'finished', finishedFirstVisit: true })
  })
})

describe('jobs of a file', () => {
  const jobs = `job,date,van,brand,model_number,symptom,families_needed,finished_first_visit
F-1,2026-11-20,VAN1,Quorvane,QV-1042/A,does not drain,pump,
F-2,2026-11-19,VAN1,Quorvane,QV-1042/B,door,lock,no
`
  beforeEach(() => shop.load({ 'jobs.csv': jobs }))

  test('are read, worked on and ended like others, and load again as they were', async () => {
    const job = await shop.answer('jobs.read-job', { job: 'F-1' })
    expect(job).toMatchObject({
      model: 'QV-1042/A',
      brand: 'Quorvane',
      van: 'VAN1',
      state: 'open',
      openedOn: [],
    })
    await shop.answer('jobs.take-part', { job: 'F-1', part: 'P-100' })
    await shop.answer('jobs.mark-fitted', { job: 'F-1', part: 'P-100' })
    const done = await ended({ job: 'F-1' })
    expect(done).toMatchObject({ confirmed: ['P-100'], job: { state: 'finished', finishedFirstVisit: true } })
    const [loaded] = (await shop.load({ 'jobs.csv': jobs.replace(',pump,\n', ',pump,yes\n') })).files
    expect(loaded).toMatchObject({ added: 0, changed: 0, unchanged: 2 })
  })

  test('stand as the file says', async () => {
    expect(await shop.answer('jobs.read-job', { job: 'F-2' })).toMatchObject({
      state: 'finished',
      finishedFirstVisit: false,
    })
  })
})

test('jobs are listed the latest first, by state, van and any word of them', async () => {
  await open({ date: '2026-11-20' })
  await open({ job: 'J-2', date: '2026-11-21', symptom: 'leaks', van: undefined })
  await take()
  await ended({ job: 'J-2', outcome: 'given-up', why: 'declined' })
  const list = async (asked: GivenInput<'jobs.list-jobs'>) =>
    (await shop.answer('jobs.list-jobs', asked)).jobs.map(
      ({ job, state, inHand }) => `${job} ${state} ${inHand}`,
    )
  expect(await list({})).toEqual(['J-1 open 1'])
  expect(await list({ state: 'ended' })).toEqual(['J-2 given-up 0'])
  expect(await list({ state: 'all' })).toEqual(['J-2 given-up 0', 'J-1 open 1'])
  expect(await list({ state: 'all', van: 'VAN1' })).toEqual(['J-1 open 1'])
  expect(await list({ state: 'all', text: 'LEAK' })).toEqual(['J-2 given-up 0'])
  expect(await list({ state: 'all', text: 'card 17' })).toHaveLength(2)
  expect(await shop.answer('jobs.list-jobs', { state: 'all', most: 1 })).toMatchObject({ more: true })
})

test('what ended jobs teach: what was thought to be needed, what was fitted, and what was wrong', async () => {
  await shop.load({
    'jobs.csv':
      'job,date,brand,model_number,symptom,families_needed,finished_first_visit\nF-1,2026-11-01,Quorvane,QV-1042/A,leaks,pump,no\n',
    'usage.csv': 'date,location,part_number,quantity,job\n2026-11-01,VAN1,L-200,1,F-1\n',
  })
  await open()
  await shop.answer('jobs.need-part', { job: 'J-1', family: 'lock' })
  await shop.answer('jobs.need-part', { job: 'J-1', family: 'lock', quantity: 0 })
  await take()
  await fit()
  await ended({ causeKey: 'pump-blocked', cause: 'coin in the pump' })
  await open({ job: 'J-2' })
  await ended({ job: 'J-2', outcome: 'given-up', why: 'declined' })
  const { jobs } = await shop.answer('jobs.list-finished-jobs', {})
  expect(jobs).toEqual([
    expect.objectContaining({
      ...{ job: 'F-1', symptom: 'leaks', familiesNeeded: ['pump'], familiesFitted: ['lock'] },
      ...{ cause: null, finishedFirstVisit: false },
    }),
    {
      ...{ job: 'J-1', date: '2026-11-23', brand: 'Quorvane', modelNumber: 'QV-1042/A', platform: null },
      ...{ applianceType: 'dishwasher', symptom: 'water stays in', causeKey: 'pump-blocked' },
      ...{ cause: 'coin in the pump', familiesNeeded: ['lock'], familiesFitted: ['pump'] },
      finishedFirstVisit: true,
    },
  ])
})

test('a count proposes a job of the screen for a part that it needed and nobody booked', async () => {
  await open()
  await shop.answer('jobs.need-part', { job: 'J-1', family: 'pump' })
  const { countId } = await shop.answer('van-counts.begin-count', { location: 'VAN1' })
  await shop.answer('van-counts.record-reading', { countId, part: 'P-100', pieces: 0 })
  const { lines } = await shop.answer('van-counts.read-count', { countId, compare: true })
  const line = lines.find(({ partNumber }) => partNumber === 'P-100')
  expect(line?.proposed).toContainEqual(expect.objectContaining({ kind: 'job-line', detail: 'J-1' }))
})
