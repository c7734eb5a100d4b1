import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import fc from 'fast-check'
import { afterAll, expect, test } from 'vitest'
import type { GivenInput, KnownRequestName, Output } from '../../../shared-schemas/index.ts'
import { openTestShop, type TestShop } from '../../builders/open-test-shop.ts'
import { carry, contentsOf, joinedCatalogue } from './joined-machines.ts'
import { ledgerParts, ledgerPlaces } from './ledger-catalogue.ts'

const folder = mkdtempSync(path.join(tmpdir(), 'tallyplate-joined-laws-'))
afterAll(() => rmSync(folder, { recursive: true }))

/** Something that staff do on one machine, which may be refused: then nothing of it is written. */
type Deed = (shop: TestShop) => Promise<unknown>

const part = fc.constantFrom(...ledgerParts)
const place = fc.constantFrom(...ledgerPlaces)
const job = fc.constantFrom('J-1', 'J-2')
const quantity = fc.integer({ min: 1, max: 4 })
const signed = { initials: 'AB' }

/** A request with generated input. */
function ask<Name extends KnownRequestName>(
  name: Name,
  input: fc.Arbitrary<GivenInput<Name>>,
): fc.Arbitrary<Deed> {
  return input.map(given => (shop: TestShop) => shop.ask(name, given))
}

const deed: fc.Arbitrary<Deed> = fc.oneof(
  ask(
    'stock-ledger.record-movement',
    fc
      .record({ part, quantity, to: place })
      .map(given => ({ ...given, from: 'supplier', reason: 'delivered' })),
  ),
  ask(
    'stock-ledger.record-movement',
    fc.record({ part, quantity, from: place, to: place }).map(given => ({ ...given, reason: 'moved' })),
  ),
  ask(
    'stock-ledger.attach-code',
    fc.record({ code: fc.constantFrom('BAG-1', 'BAG-2'), part, instead: fc.constant(true) }),
  ),
  ask(
    'stock-ledger.reserve-part',
    fc
      .record({ part, location: place, quantity, reference: job })
      .map(given => ({ ...given, heldFor: 'job' as const })),
  ),
  ask(
    'jobs.open-job',
    fc.record({
      job,
      symptom: fc.constantFrom('leaks', 'noisy'),
      model: fc.constantFrom('QV-1042/A', 'QV-1042/?'),
    }),
  ),
  ask(
    'jobs.change-job',
    fc.record({ job, symptom: fc.constantFrom('hums', 'smells'), van: fc.constantFrom('van-1', 'van-2') }),
  ),
  ask('jobs.need-part', fc.record({ job, family: fc.constant('pump'), quantity: fc.nat({ max: 2 }) })),
  ask('jobs.take-part', fc.record({ job, part, quantity, from: place, usedBeforeBooked: fc.boolean() })),
  ask('jobs.mark-fitted', fc.record({ job, part, quantity: fc.constantFrom(1, 2, -1) })),
  ask('jobs.bring-back', fc.record({ job, part, quantity, to: place })),
  ask(
    'jobs.end-visit',
    fc
      .record({
        job,
        outcome: fc.constantFrom('finished', 'not-finished', 'given-up'),
        why: fc.constant('wrong-part' as const),
      })
      .map(given => ({ ...given, ...signed })),
  ),
  ask('jobs.reopen-job', fc.record({ job })),
  ask(
    'returns.take-return',
    fc.record({ kind: fc.constantFrom('unused', 'wrong-fit'), part, quantity }).map(given => ({
      ...given,
      ...signed,
      from: 'customer',
      reference: 'card 9',
      reason: 'back',
      model: 'QV-1042/A',
    })),
  ),
  fc
    .record({ way: fc.constantFrom('to-shelf', 'to-supplier', 'scrap'), quantity, to: place })
    .map(given => decideFirst(given)),
  fc
    .record({ location: place, part, pieces: fc.nat({ max: 6 }), isPosted: fc.boolean() })
    .map(given => countOne(given)),
  ask('stock-ledger.reverse-movement', fc.constant({ movementId: 'none', reason: 'never there' })),
  fc.constant(reverseLast),
  fc.record({ job, part, from: place }).map(given => doWholeJob(given)),
)

function decideFirst(decided: Pick<GivenInput<'returns.decide-return'>, 'way' | 'quantity' | 'to'>): Deed {
  return async shop => {
    const { returns } = await shop.answer('returns.list-returns', {})
    const [first] = returns
    if (first !== undefined)
      await shop.ask('returns.decide-return', {
        ...decided,
        ...signed,
        returnId: first.returnId,
        reason: 'looked at',
      })
  }
}

function countOne({
  location,
  part,
  pieces,
  isPosted,
}: {
  location: string
  part: string
  pieces: number
  isPosted: boolean
}): Deed {
  return async shop => {
    const { countId } = await shop.answer('van-counts.begin-count', { location })
    await shop.answer('van-counts.record-reading', { countId, part, pieces })
    if (isPosted) await shop.answer('van-counts.post-count', { countId })
  }
}

/** A job from its opening to its end, as most are. */
function doWholeJob({ job, part, from }: { job: string; part: string; from: string }): Deed {
  return async shop => {
    await shop.ask('jobs.open-job', { job, model: 'QV-1042/A' })
    await shop.ask('jobs.take-part', { job, part, from, usedBeforeBooked: true })
    await shop.ask('jobs.mark-fitted', { job, part })
    await shop.ask('jobs.end-visit', { job, outcome: 'finished', ...signed })
  }
}

async function reverseLast(shop: TestShop): Promise<void> {
  const { movements } = await shop.answer('stock-ledger.list-movements', { most: 1 })
  const [last] = movements
  if (last !== undefined)
    await shop.ask('stock-ledger.reverse-movement', { movementId: last.movementId, reason: 'a mistake' })
}

const deeds = fc.array(deed, { minLength: 4, maxLength: 16, size: 'max' })
const machines = ['a', 'b', 'c'] as const
type Machine = (typeof machines)[number]

/** A machine that holds nothing of its own, after it took these in one after the other. */
async function joined(
  shops: Readonly<Record<string, TestShop>>,
  order: readonly string[],
): Promise<TestShop> {
  const shop = await openTestShop(joinedCatalogue, { device: 'joined' })
  for (const name of order) await carry(shops[name] as TestShop, shop, folder)
  return shop
}

async function expectSoundBook(shop: TestShop): Promise<void> {
  const { checks } = await shop.answer('database.verify', {})
  expect(checks.filter(({ ok }) => !ok)).toEqual([])
}

test('jobs, counts, returns and codes of three machines join to the same in any order and grouping, and twice', async () => {
  const seen = new Set<string>()
  await fc.assert(
    fc.asyncProperty(fc.record({ a: deeds, b: deeds, c: deeds }), async done => {
      const shops = {} as Record<Machine, TestShop>
      for (const name of machines) {
        shops[name] = await openTestShop(joinedCatalogue, { device: name })
        for (const one of done[name]) await one(shops[name])
        await expectSoundBook(shops[name])
      }
      const one = await joined(shops, ['a', 'b', 'c'])
      const expected = await contentsOf(one)
      note(expected, seen)
      for (const order of [
        ['c', 'b', 'a'],
        ['b', 'a', 'b', 'c', 'a'],
      ]) {
        const other = await joined(shops, order)
        expect(await contentsOf(other)).toEqual(expected)
        other.close()
      }
      // (a with b) taken as one, then c; and the machines themselves, each having heard of all others.
      const pair = await joined(shops, ['a', 'b'])
      const grouped = await joined({ ...shops, pair }, ['c', 'pair'])
      expect(await contentsOf(grouped)).toEqual(expected)
      for (const name of machines) {
        for (const other of machines) if (other !== name) await carry(shops[other], shops[name], folder)
        expect(await contentsOf(shops[name])).toEqual(expected)
      }
      for (const shop of [one, pair, grouped, ...Object.values(shops)]) shop.close()
    }),
    { numRuns: 8, endOnFailure: true },
  )
  // The cases are worth something only if all of this occurs in them.
  expect([...seen].sort()).toEqual(['codes', 'conflicts', 'counts', 'finished', 'jobs', 'returns'])
}, 120_000)

function note(contents: Awaited<ReturnType<typeof contentsOf>>, seen: Set<string>): void {
  const { jobs, counts, returns, conflicts, codes, finished } = contents
  const there = { jobs, counts, returns, conflicts, finished: finished.jobs, codes: codes.filter(isPart) }
  for (const [name, list] of Object.entries(there)) if (list.length > 0) seen.add(name)
}

function isPart({ kind }: Output<'stock-ledger.find-code'>['found']): boolean {
  return kind === 'part'
}

test('whatever is done with jobs and returns, every piece is somewhere, and what was written stays written', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(deed, { minLength: 60, maxLength: 80, size: 'max' }), async done => {
      const shop = await openTestShop(joinedCatalogue)
      for (const one of done) await one(shop)
      await expectSoundBook(shop)
      await expectConserved(shop)
      shop.close()
    }),
    { numRuns: 8, endOnFailure: true },
  )
}, 120_000)

/** What is in hand on the jobs, and undecided in quarantine, is what the ledger says of them. */
async function expectConserved(shop: TestShop): Promise<void> {
  const { movements } = await shop.answer('stock-ledger.list-movements', { most: 500 })
  const { jobs } = await shop.answer('jobs.list-jobs', { state: 'all' })
  for (const { job, inHand } of jobs) {
    const told = await shop.answer('jobs.read-job', { job })
    const ofJob = movements.filter(line => line.reference === job && [line.from, line.to].includes('job'))
    const out = ofJob.reduce((sum, line) => sum + (line.to === 'job' ? line.quantity : -line.quantity), 0)
    const fitted = told.parts.reduce((sum, line) => sum + line.fitted, 0)
    expect(told.parts.reduce((sum, line) => sum + line.taken - line.broughtBack, 0)).toBe(out)
    expect(inHand).toBe(out - fitted)
  }
  const { returns } = await shop.answer('returns.list-returns', { state: 'all' })
  for (const { quantity, undecided, decisions } of returns) {
    expect(undecided).toBeGreaterThanOrEqual(0)
    expect(undecided + decisions.reduce((sum, line) => sum + line.quantity, 0)).toBe(quantity)
  }
}
