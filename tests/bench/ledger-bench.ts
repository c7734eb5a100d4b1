import { mkdtempSync, rmSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import Database from 'better-sqlite3'
import { v7 as newId } from 'uuid'
import { openApplication } from '../../electron/application.ts'
import { inTransaction } from '../../electron/database/handles.ts'
import { openDatabase } from '../../electron/database/open-database.ts'
import { appendStamped, plainMovement } from '../../electron/stock-ledger/append-movements.ts'
import type { KnownRequestName } from '../../shared-schemas/index.ts'

const movements = 1_000_000
const parts = 5_000
const places = 5

/** A book of a million movements: what is asked of it, and what it costs to write one more. */
export async function run(): Promise<void> {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'tallyplate-ledger-bench-'))
  const file = path.join(folder, 'shop.sqlite')
  try {
    fill(file)
    const application = openApplication({
      databaseFile: file,
      sampleFolder: null,
      now: () => new Date(),
      newId: () => newId(),
      device: 'bench',
      logDefect: (_reference, _request, defect) => console.error(defect),
    })
    await application.opened
    const ask = async (name: KnownRequestName, input: object) => {
      const reply = await application.ask(name, input)
      if (!reply.ok) throw new Error(`${name} was refused: ${reply.problem.code}`)
      return reply.value
    }
    await report('on hand of a location', 20, 40, () => ask('stock-ledger.list-on-hand', { location: 'L0' }))
    await report("a part's history page", 20, 200, at =>
      ask('stock-ledger.list-movements', { part: `P${at % parts}`, most: 50 }),
    )
    const raw = rawInserts(folder)
    const record = await report('one movement, durable', 15, 300, at =>
      ask('stock-ledger.record-movement', {
        ...{ part: `P${at % parts}`, quantity: 1, from: 'supplier', to: 'L1', reason: 'bench' },
      }),
    )
    console.log(
      `  one raw SQLite insert, durable: p95 ${raw.toFixed(2)} ms; ours is ${(record / raw).toFixed(1)} times that`,
    )
    await postCount(ask)
    application.close()
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

/** Most of it at one shop, as it is. */
function fill(file: string): void {
  const database = openDatabase(file)
  const began = performance.now()
  inTransaction(database, writable => {
    writable.run("INSERT INTO family VALUES (1, 'pump', 'Pump', '', '', 0)")
    for (let at = 0; at < parts; at++)
      writable.run(
        "INSERT INTO part VALUES (?, ?, ?, 1, '', 'genuine', '', NULL)",
        at + 1,
        `P${at}`,
        `P${at}`,
      )
    for (let at = 0; at < places; at++)
      writable.run(
        'INSERT INTO location VALUES (?, ?, ?, ?)',
        at + 1,
        `L${at}`,
        at === 0 ? 'shop' : 'van',
        `L${at}`,
      )
    for (let at = 0; at < movements; at++) {
      const isReceipt = at % 2 === 0
      appendStamped(writable, {
        ...plainMovement,
        kind: isReceipt ? 'receipt' : 'transfer',
        partId: (at % parts) + 1,
        quantity: isReceipt ? 2 : 1,
        fromLocationId: isReceipt ? null : 1,
        toLocationId: isReceipt ? 1 : (at % (places - 1)) + 2,
        outside: isReceipt ? 'supplier' : null,
        initials: 'AB',
        reason: 'bench',
        movementId: idAt(at),
        recordedAt: new Date(Date.UTC(2020, 0, 1) + at * 60_000).toISOString(),
        device: 'bench',
        unitCost: isReceipt ? '4.20' : null,
      })
    }
  })
  database.close()
  console.log(
    `  filled with ${movements.toLocaleString('en')} movements in ${((performance.now() - began) / 1000).toFixed(0)} s`,
  )
}

/** UUIDv7 by a made-up time, so that ids stand in their order. */
function idAt(at: number): string {
  const time = (Date.UTC(2020, 0, 1) + at * 60_000).toString(16).padStart(12, '0')
  return `${time.slice(0, 8)}-${time.slice(8)}-7000-8000-${at.toString(16).padStart(12, '0')}`
}

/** The p95 in milliseconds, beside the most that it may be. */
async function report(
  what: string,
  most: number,
  times: number,
  act: (at: number) => unknown,
): Promise<number> {
  const took: number[] = []
  for (let at = 0; at < times; at++) {
    const began = performance.now()
    await act(at)
    took.push(performance.now() - began)
  }
  took.sort((one, other) => one - other)
  const [p50, p95] = [took[Math.floor(times / 2)] ?? 0, took[Math.floor(times * 0.95)] ?? 0]
  console.log(`  ${what}: p50 ${p50.toFixed(2)} ms, p95 ${p95.toFixed(2)} ms (must ${most} ms)`)
  return p95
}

/** What a durable insert costs on this disk at the least. */
function rawInserts(folder: string): number {
  const raw = new Database(path.join(folder, 'raw.sqlite'))
  raw.pragma('journal_mode = WAL')
  raw.pragma('synchronous = FULL')
  raw.exec('CREATE TABLE line (id TEXT PRIMARY KEY, part INTEGER, quantity INTEGER)')
  const insert = raw.prepare('INSERT INTO line VALUES (?, ?, ?)')
  const took = Array.from({ length: 300 }, (_, at) => {
    const began = performance.now()
    insert.run(newId(), at, 1)
    return performance.now() - began
  }).sort((one, other) => one - other)
  raw.close()
  return took[285] ?? 0
}

async function postCount(ask: (name: KnownRequestName, input: object) => Promise<unknown>): Promise<void> {
  const { countId } = (await ask('van-counts.begin-count', { location: 'L2' })) as { countId: string }
  for (let at = 0; at < 400; at++)
    await ask('van-counts.record-reading', { countId, part: `P${at}`, pieces: at % 7 })
  const began = performance.now()
  await ask('van-counts.post-count', { countId })
  console.log(`  posting a count of 400 lines: ${(performance.now() - began).toFixed(0)} ms (must 200 ms)`)
}
