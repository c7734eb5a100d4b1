import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import type { CheckAnswer } from '../../../shared-schemas/fault-finding.ts'
import { faultCatalogue } from '../../builders/fault-catalogue.ts'
import { openTestShop, type TestShop } from '../../builders/open-test-shop.ts'

let shop: TestShop
beforeEach(async () => {
  shop = await openTestShop(faultCatalogue)
})
afterEach(() => shop.close())

const drain = { applianceType: 'washer', symptom: 'does not drain' }
const appliance = { model: 'OW 4512/01', brand: 'Ostrel' }
const weigh = (answers: CheckAnswer[], over = {}) =>
  shop.answer('fault-guide.weigh-faults', { ...drain, answers, ...over })
const shareOf = (weighed: Awaited<ReturnType<typeof weigh>>, cause: string) =>
  weighed.causes.find(known => known.cause === cause)?.arithmetic.prior ?? Number.NaN

async function finishJob(causeKey: string, model = appliance): Promise<void> {
  const { job } = await shop.answer('jobs.open-job', { ...model, symptom: 'Water stays in.', initials: 'AB' })
  await shop.answer('jobs.end-visit', { job, outcome: 'finished', causeKey, initials: 'AB' })
}

describe('symptoms', () => {
  test('are listed with the other words for them, of one kind of appliance', async () => {
    const { symptoms } = await shop.answer('fault-guide.list-symptoms', { applianceType: 'washer' })
    expect(symptoms).toMatchObject([
      { symptom: 'does not drain', alsoSaid: ['water stays in', 'keeps humming'] },
      { symptom: 'trips the supply' },
    ])
    const none = await shop.answer('fault-guide.list-symptoms', { applianceType: 'oven' })
    expect(none.symptoms).toEqual([])
  })

  test('are found under another word for them, and told under the guide’s own', async () => {
    expect((await weigh([], { symptom: 'Keeps humming.' })).symptom).toBe('does not drain')
  })

  test('that the guide does not have are refused with those it has', async () => {
    expect(await shop.ask('fault-guide.weigh-faults', { ...drain, symptom: 'squeaks' })).toMatchObject({
      ok: false,
      problem: { code: 'symptom-not-in-guide', known: ['does not drain', 'trips the supply'] },
    })
  })
})

describe('the shop’s own jobs', () => {
  test('bend the weights of the guide for the kind of appliance, and more for the platform', async () => {
    const before = shareOf(await weigh([]), 'pump worn')
    expect(before).toBeCloseTo(0.3, 10)
    await finishJob('pump worn')
    const ofType = await weigh([])
    // (1 + 20 · 0.3) / (1 + 20): one job of the type on a guide that is worth twenty; then as much for the platform.
    expect(shareOf(ofType, 'pump worn')).toBeCloseTo(7 / 21, 10)
    expect(ofType.jobs).toEqual({ ofType: 1, ofPlatform: 0 })
    const ofPlatform = await weigh([], { appliance })
    expect(shareOf(ofPlatform, 'pump worn')).toBeCloseTo((1 + 8 * (7 / 21)) / 9, 10)
    expect(ofPlatform).toMatchObject({ platform: 'washer-1', jobs: { ofType: 1, ofPlatform: 1 } })
  })

  test('of another kind of appliance teach nothing here', async () => {
    await finishJob('pump worn', { model: '4821-07', brand: 'Brennick' })
    expect(shareOf(await weigh([]), 'pump worn')).toBeCloseTo(0.3, 10)
  })

  test('that were given up teach nothing', async () => {
    const { job } = await shop.answer('jobs.open-job', { ...appliance, symptom: 'does not drain' })
    await shop.answer('jobs.end-visit', {
      ...{ job, outcome: 'given-up', why: 'beyond-repair', causeKey: 'pump worn', initials: 'AB' },
    })
    expect(shareOf(await weigh([]), 'pump worn')).toBeCloseTo(0.3, 10)
  })
})

describe('a finding that is kept for a job', () => {
  const sure: CheckAnswer[] = [
    { check: 'rinse hold', outcome: 'without hold' },
    { check: 'filter', outcome: 'blocked' },
  ]
  const lesson = async () => {
    const { lessons } = await shop.answer('fault-guide.read-lessons', {})
    return lessons.find(({ symptom }) => symptom === 'does not drain')
  }
  const keepFor = async (causeKey: string) => {
    const { job } = await shop.answer('jobs.open-job', { ...appliance, symptom: 'does not drain' })
    await shop.answer('fault-guide.keep-finding', { ...drain, answers: sure, job, initials: 'AB' })
    await shop.answer('jobs.end-visit', { job, outcome: 'finished', causeKey, initials: 'AB' })
  }

  test('counts as right where the job ended with its cause, and as wrong where it did not', async () => {
    await keepFor('filter blocked')
    await keepFor('pump worn')
    expect(await lesson()).toMatchObject({ jobs: 2, proposals: 2, firstRight: 1 })
  })

  test('is held by its first proposal, though the guide is asked again', async () => {
    const { job } = await shop.answer('jobs.open-job', { ...appliance, symptom: 'does not drain' })
    const keep = (answers: CheckAnswer[]) =>
      shop.answer('fault-guide.keep-finding', { ...drain, answers, job, initials: 'AB' })
    await keep(sure)
    await keep([
      { check: 'rinse hold', outcome: 'with hold' },
      { check: 'filter', outcome: 'clear' },
    ])
    await shop.answer('jobs.end-visit', {
      ...{ job, outcome: 'finished', causeKey: 'waits with water on purpose', initials: 'AB' },
    })
    expect(await lesson()).toMatchObject({ proposals: 1, firstRight: 0 })
  })

  test('of a job that does not exist is refused, and nothing is kept', async () => {
    const kept = await shop.ask('fault-guide.keep-finding', {
      ...drain,
      answers: sure,
      job: 'J99',
      initials: 'AB',
    })
    expect(kept).toMatchObject({ ok: false, problem: { code: 'job-not-found', typed: 'J99' } })
  })

  test('without a proposal, since the guide could not tell, is no right one and no wrong one', async () => {
    const { job } = await shop.answer('jobs.open-job', { ...appliance, symptom: 'does not drain' })
    await shop.answer('fault-guide.keep-finding', { ...drain, answers: [], job, initials: 'AB' })
    await shop.answer('jobs.end-visit', {
      ...{ job, outcome: 'finished', causeKey: 'filter blocked', initials: 'AB' },
    })
    expect(await lesson()).toMatchObject({ jobs: 1, proposals: 0 })
  })
})
