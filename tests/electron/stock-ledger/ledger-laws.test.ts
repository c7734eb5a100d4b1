import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import fc from 'fast-check'
import { afterAll, describe, expect, test } from 'vitest'
import type { Output } from '../../../shared-schemas/index.ts'
import type { Reply } from '../../../shared-schemas/request.ts'
import { openTestShop, type TestShop } from '../../builders/open-test-shop.ts'
import { ledgerCatalogue, ledgerParts, ledgerPlaces } from './ledger-catalogue.ts'
import { type LedgerCommand, ModelLedger } from './model-ledger.ts'

const folder = mkdtempSync(path.join(tmpdir(), 'tallyplate-ledger-'))
afterAll(() => rmSync(folder, { recursive: true }))

const part = fc.constantFrom(...ledgerParts)
const place = fc.constantFrom(...ledgerPlaces)
const end = fc.oneof(
  { weight: 3, arbitrary: place },
  fc.constantFrom('supplier', 'customer', 'job', 'scrap', 'count'),
)
const reference = fc.constantFrom('J1', 'J2', 'Cole')
const quantity = fc.integer({ min: 1, max: 6 })

const record: fc.Arbitrary<LedgerCommand> = fc.record({
  do: fc.constant('record' as const),
  part,
  quantity,
  from: end,
  to: end,
  reference: fc.option(reference, { nil: undefined }),
  usedBeforeBooked: fc.boolean(),
  takeReserved: fc.boolean(),
})
const receipt: fc.Arbitrary<LedgerCommand> = fc.record({
  do: fc.constant('record' as const),
  part,
  quantity,
  from: fc.constant('supplier'),
  to: place,
  reference: fc.constant(undefined),
  usedBeforeBooked: fc.constant(false),
  takeReserved: fc.constant(false),
})
const which = fc.nat({ max: 900 })
const command: fc.Arbitrary<LedgerCommand> = fc.oneof(
  { weight: 6, arbitrary: record },
  { weight: 3, arbitrary: receipt },
  { weight: 2, arbitrary: fc.record({ do: fc.constant('reverse' as const), which }) },
  {
    weight: 2,
    arbitrary: fc.record({ do: fc.constant('reserve' as const), part, place, quantity, reference }),
  },
  { weight: 1, arbitrary: fc.record({ do: fc.constant('release' as const), which: fc.nat({ max: 30 }) }) },
)

/** A shop beside the model, with the ids by which the shop knows what the model counts. */
class Beside {
  readonly model = new ModelLedger()
  readonly movementIds: string[] = []
  readonly #reservationIds: string[] = []
  readonly #shop: TestShop

  constructor(shop: TestShop) {
    this.#shop = shop
  }

  async act(command: LedgerCommand): Promise<void> {
    const expected = this.model.act(command)
    const reply = await this.#ask(command)
    expect(reply.ok ? undefined : reply.problem.code, JSON.stringify(command)).toBe(expected)
    await this.#follow(command, reply)
  }

  #ask(command: LedgerCommand): Promise<Reply<object>> {
    switch (command.do) {
      case 'record': {
        const { do: _, reference, ...rest } = command
        const named = reference === undefined ? {} : { reference }
        return this.#shop.ask('stock-ledger.record-movement', { ...rest, ...named, reason: 'as generated' })
      }
      case 'reverse': {
        const movementId = this.movementIds[command.which] ?? 'none'
        return this.#shop.ask('stock-ledger.reverse-movement', { movementId, reason: 'as generated' })
      }
      case 'reserve': {
        const { part, place: location, quantity, reference } = command
        const heldFor = 'job'
        return this.#shop.ask('stock-ledger.reserve-part', { part, location, quantity, heldFor, reference })
      }
      case 'release': {
        const reservationId = this.#reservationIds[command.which] ?? 'none'
        return this.#shop.ask('stock-ledger.release-reservation', { reservationId })
      }
    }
  }

  async #follow(command: LedgerCommand, reply: Reply<object>): Promise<void> {
    if (!reply.ok) return
    if (command.do === 'record' || command.do === 'reverse')
      this.movementIds.push((reply.value as Output<'stock-ledger.record-movement'>).movement.movementId)
    // A movement may end a reservation and keep the rest under a new id, which only the list tells.
    if (this.#reservationIds.length === this.model.reservations.length) return
    const { reservations } = await this.#shop.answer('stock-ledger.list-reservations', {})
    for (const { reservationId } of reservations)
      if (!this.#reservationIds.includes(reservationId)) this.#reservationIds.push(reservationId)
  }

  async expectSameBook(): Promise<void> {
    const { rows } = await this.#shop.answer('stock-ledger.list-on-hand', {})
    const book = Object.fromEntries(rows.map(row => [`${row.location} ${row.partNumber}`, row.quantity]))
    expect(book).toEqual(Object.fromEntries([...this.model.onHand].filter(([, onHand]) => onHand !== 0)))
    const reserved = rows.reduce((sum, row) => sum + Math.max(0, row.reserved), 0)
    const kept = this.model.reservations.filter(
      ({ isOpen, place, part }) => isOpen && this.model.at(place, part) !== 0,
    )
    expect(reserved).toBe(kept.reduce((sum, { quantity }) => sum + quantity, 0))
  }
}

async function listWholeLedger(shop: TestShop) {
  const lines: Output<'stock-ledger.list-movements'>['movements'] = []
  for (let more = true; more; ) {
    const before = lines.at(-1)?.movementId
    const page = await shop.answer('stock-ledger.list-movements', {
      most: 500,
      ...(before ? { before } : {}),
    })
    lines.push(...page.movements)
    more = page.more
  }
  return lines.reverse()
}

describe('the book', () => {
  let commandsRun = 0

  test('is what a small model of it says after every sequence of commands: 100,000 of them', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(command, { minLength: 1_000, maxLength: 1_010, size: 'max' }),
        async commands => {
          const shop = await openTestShop(ledgerCatalogue)
          const beside = new Beside(shop)
          let before: Awaited<ReturnType<typeof listWholeLedger>> = []
          for (const [at, one] of commands.entries()) {
            await beside.act(one)
            if (at % 200 !== 199) continue
            await beside.expectSameBook()
            const ledger = await listWholeLedger(shop)
            // Nothing is edited: what stood there stands there, but for being named by what reverses it.
            expect(ledger.slice(0, before.length).map(asFirstWritten)).toEqual(before.map(asFirstWritten))
            before = ledger
          }
          await beside.expectSameBook()
          const { checks } = await shop.answer('database.verify', {})
          expect(checks.filter(({ ok }) => !ok)).toEqual([])
          commandsRun += commands.length
          shop.close()
        },
      ),
      { numRuns: 100, endOnFailure: true },
    )
    expect(commandsRun).toBeGreaterThanOrEqual(100_000)
  }, 240_000)

  const asFirstWritten = ({ reversedBy: _, ...line }: Awaited<ReturnType<typeof listWholeLedger>>[number]) =>
    line

  test('sums to the same when its balances were brought forward again and again', async () => {
    const shop = await openTestShop(ledgerCatalogue)
    const beside = new Beside(shop)
    for (const one of fc.sample(command, 9_000)) await beside.act(one)
    expect(beside.movementIds.length).toBeGreaterThan(4_000)
    await beside.expectSameBook()
    const { checks } = await shop.answer('database.verify', {})
    expect(checks.filter(({ ok }) => !ok)).toEqual([])
    shop.close()
  }, 60_000)

  test('tells after each movement of a part what there is, page by page', async () => {
    const shop = await openTestShop(ledgerCatalogue)
    const beside = new Beside(shop)
    for (const one of fc.sample(command, 400)) await beside.act(one)
    const told: number[] = []
    for (let before: string | undefined, more = true; more; ) {
      const asked = { part: '480121', location: 'shop', most: 7, ...(before ? { before } : {}) }
      const page = await shop.answer('stock-ledger.list-movements', asked)
      told.unshift(...page.movements.map(({ balance }) => balance ?? Number.NaN).reverse())
      before = page.movements.at(-1)?.movementId
      more = page.more
    }
    let held = 0
    const expected = beside.model.movements.flatMap(({ part, from, to, quantity }) => {
      if (part !== '480121' || (from !== 'shop' && to !== 'shop')) return []
      held += to === 'shop' ? quantity : -quantity
      return [held]
    })
    expect(told).toEqual(expected)
    shop.close()
  })
})

describe('ledgers written on several machines', () => {
  /** What a shop holds, whatever the order in which it came there. */
  async function contents(shop: TestShop) {
    const { rows } = await shop.answer('stock-ledger.list-on-hand', {})
    const { reservations } = await shop.answer('stock-ledger.list-reservations', {})
    return { rows, reservations, ledger: await listWholeLedger(shop) }
  }

  const orders = [
    ['a', 'b', 'c'],
    ['c', 'b', 'a'],
    ['b', 'a', 'c', 'b', 'a'],
  ] as const

  test('merge to the same in any order, in any grouping, and as often as one likes', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.record({ a: sequence, b: sequence, c: sequence }),
        fc.nat(),
        async (commands, serial) => {
          const fileOf = (name: string) => path.join(folder, `${serial}-${name}.ledger`)
          for (const name of ['a', 'b', 'c'] as const) {
            const shop = await openTestShop(ledgerCatalogue, { device: name })
            const beside = new Beside(shop)
            for (const one of commands[name]) await beside.act(one)
            await shop.answer('stock-ledger.export-ledger', { file: fileOf(name) })
            shop.close()
          }
          const merged = []
          for (const order of orders) {
            const shop = await openTestShop(ledgerCatalogue)
            for (const name of order) await shop.answer('stock-ledger.import-ledger', { file: fileOf(name) })
            merged.push(await contents(shop))
            shop.close()
          }
          // (a with b) taken as one, then c.
          const pair = await openTestShop(ledgerCatalogue)
          for (const name of ['a', 'b'])
            await pair.answer('stock-ledger.import-ledger', { file: fileOf(name) })
          await pair.answer('stock-ledger.export-ledger', { file: fileOf('ab') })
          pair.close()
          const grouped = await openTestShop(ledgerCatalogue)
          for (const name of ['c', 'ab'])
            await grouped.answer('stock-ledger.import-ledger', { file: fileOf(name) })
          merged.push(await contents(grouped))
          grouped.close()
          for (const one of merged) expect(one).toEqual(merged[0])
        },
      ),
      { numRuns: 25, endOnFailure: true },
    )
  }, 120_000)

  const sequence = fc.array(command, { minLength: 5, maxLength: 40, size: 'max' })
})
