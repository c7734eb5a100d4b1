import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import { afterAll, afterEach, beforeEach, describe, expect, test } from 'vitest'
import { openTestShop, type TestShop } from '../../builders/open-test-shop.ts'
import { refusalOf } from '../../builders/refusal-of.ts'
import { carry, contentsOf, joinedCatalogue } from './joined-machines.ts'

const folder = mkdtempSync(path.join(tmpdir(), 'tallyplate-joined-'))
afterAll(() => rmSync(folder, { recursive: true }))

/** The shop's own machine, and the one in the van. */
let here: TestShop
let van: TestShop
beforeEach(async () => {
  here = await openTestShop(joinedCatalogue, { device: 'counter' })
  van = await openTestShop(joinedCatalogue, { device: 'van-laptop' })
  await here.answer('stock-ledger.record-movement', {
    ...{ part: '480121', quantity: 5, from: 'supplier', to: 'van-1', reason: 'delivered' },
  })
  await carry(here, van, folder)
})
afterEach(() => {
  here.close()
  van.close()
})

const use = (shop: TestShop, quantity = 1) =>
  shop.answer('stock-ledger.record-movement', {
    ...{ part: '480121', quantity, from: 'van-1', to: 'customer', reference: 'card 9', reason: 'sold' },
  })
async function count(shop: TestShop, pieces: number): Promise<string> {
  const { countId } = await shop.answer('van-counts.begin-count', { location: 'van-1' })
  await shop.answer('van-counts.record-reading', { countId, part: '480121', pieces })
  return countId
}
/** Ids are in the order of their milliseconds across machines; what follows is later. */
const later = () => wait(3)
const onHand = async (shop: TestShop) =>
  (await shop.answer('stock-ledger.list-on-hand', { location: 'van-1' })).rows.map(({ quantity }) => quantity)

test('a job, a count, a return and a code of the van are in the shop once its file is taken in, and once only', async () => {
  await van.answer('jobs.open-job', { job: 'J-1', model: 'QV-1042/A', symptom: 'leaks', van: 'van-1' })
  await van.answer('jobs.need-part', { job: 'J-1', family: 'pump' })
  await van.answer('jobs.take-part', { job: 'J-1', part: '480121' })
  await van.answer('jobs.mark-fitted', { job: 'J-1', part: '480121' })
  await van.answer('jobs.end-visit', { job: 'J-1', outcome: 'finished', initials: 'AB' })
  await van.answer('stock-ledger.attach-code', { code: 'BAG-1', part: '480122' })
  await van.answer('returns.take-return', {
    ...{ kind: 'wrong-fit', part: '480122', from: 'customer', reference: 'card 9', reason: 'too long' },
    ...{ model: 'QV-1042/A', initials: 'AB' },
  })
  await van.answer('van-counts.post-count', { countId: await count(van, 4) })
  const first = await carry(van, here, folder)
  expect(first).toMatchObject({ belowZero: [], conflicts: [] })
  expect(first.records).toBeGreaterThan(8)
  expect(await contentsOf(here)).toEqual(await contentsOf(van))
  expect(await here.answer('jobs.read-job', { job: 'J-1' })).toMatchObject({
    ...{ state: 'finished', finishedFirstVisit: true, openedOn: ['van-laptop'] },
  })
  expect(await carry(van, here, folder)).toMatchObject({ movements: 0, reservations: 0, records: 0 })
  const { checks } = await here.answer('database.verify', {})
  expect(checks.filter(({ ok }) => !ok)).toEqual([])
})

describe('a conflict is shown, not hidden', () => {
  test('counted here, and moved there before: until the part is counted again', async () => {
    await use(van)
    await later()
    // Somebody at the counter counts the van, in which four are left; their book still has five.
    await here.answer('van-counts.post-count', { countId: await count(here, 4) })
    const { conflicts } = await carry(van, here, folder)
    expect(conflicts).toEqual([
      expect.objectContaining({
        ...{ kind: 'moved-before-count', location: 'van-1', partNumber: '480121', bookThen: 5, bookNow: 4 },
        device: 'counter',
      }),
    ])
    // One piece was taken off twice: by the count, and by the sale that it counted already.
    expect(await onHand(here)).toEqual([3])
    await later()
    await here.answer('van-counts.post-count', { countId: await count(here, 4) })
    expect((await here.answer('stock-ledger.list-conflicts', {})).conflicts).toEqual([])
    expect(await onHand(here)).toEqual([4])
  })

  test('counted on two machines at once: one variance was booked twice', async () => {
    const first = await count(van, 4)
    await later()
    const second = await count(here, 4)
    await later()
    await van.answer('van-counts.post-count', { countId: first })
    await here.answer('van-counts.post-count', { countId: second })
    const { conflicts } = await carry(van, here, folder)
    expect(conflicts).toEqual([expect.objectContaining({ kind: 'counted-twice', partNumber: '480121' })])
    expect(await onHand(here)).toEqual([3])
  })

  test('moved there after the count is no conflict', async () => {
    await here.answer('van-counts.post-count', { countId: await count(here, 5) })
    await later()
    await use(van)
    expect((await carry(van, here, folder)).conflicts).toEqual([])
    expect(await onHand(here)).toEqual([4])
  })

  test('one number given to two jobs, until somebody writes the job anew', async () => {
    await here.answer('jobs.open-job', { job: 'J-1', symptom: 'leaks' })
    await later()
    await van.answer('jobs.open-job', { job: 'J-1', symptom: 'noisy' })
    const { conflicts } = await carry(van, here, folder)
    expect(conflicts).toEqual([{ kind: 'job-number-twice', job: 'J-1', devices: ['counter', 'van-laptop'] }])
    await later()
    await here.answer('jobs.change-job', { job: 'J-1', symptom: 'noisy' })
    expect((await here.answer('stock-ledger.list-conflicts', {})).conflicts).toEqual([])
  })
})

test('a count that another machine began goes on there: here it is neither read nor posted', async () => {
  const countId = await count(van, 4)
  await carry(van, here, folder)
  const elsewhere = { code: 'count-of-other-machine', device: 'van-laptop' }
  const reading = { countId, part: '480121', pieces: 4 }
  expect(await refusalOf(here.ask('van-counts.record-reading', reading))).toEqual(elsewhere)
  expect(await refusalOf(here.ask('van-counts.post-count', { countId }))).toEqual(elsewhere)
  expect(await here.answer('van-counts.begin-count', { location: 'van-1' })).toMatchObject({ isNew: true })
})

test('a file that tells a record otherwise, or names what is not here, is refused whole', async () => {
  await van.answer('jobs.open-job', { job: 'J-1', symptom: 'leaks' })
  await van.answer('jobs.need-part', { job: 'J-1', family: 'pump' })
  const file = path.join(folder, 'told.ledger')
  await van.answer('stock-ledger.export-ledger', { file })
  await here.answer('stock-ledger.import-ledger', { file })
  const before = await contentsOf(here)
  const sound = readFileSync(file, 'utf8')
  const changed = (from: string, to: string) => {
    expect(sound).toContain(from)
    writeFileSync(file, sound.replace(from, to))
    return refusalOf(here.ask('stock-ledger.import-ledger', { file }))
  }
  expect(await changed('"symptom":"leaks"', '"symptom":"noisy"')).toMatchObject({
    code: 'record-told-otherwise',
    file,
  })
  expect(await changed('"family_id":"pump"', '"family_id":"bump"')).toMatchObject({
    ...{ code: 'ledger-names-unknown', what: 'family', name: 'bump' },
  })
  expect(await changed('"table":"job_need"', '"table":"load_run"')).toMatchObject({ code: 'file-unreadable' })
  expect(await contentsOf(here)).toEqual(before)
})
