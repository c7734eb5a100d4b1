import { fork } from 'node:child_process'
import { createHash } from 'node:crypto'
import { once } from 'node:events'
import { copyFileSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { openDatabase } from '../../../electron/database/open-database.ts'
import { verifyDatabase } from '../../../electron/database/verify-database.ts'
import { dumpOf } from '../../builders/dump-database.ts'
import { smallCatalogue } from '../../builders/small-catalogue.ts'

const folder = mkdtempSync(path.join(tmpdir(), 'tallyplate-killed-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

/** The bench kills more often. */
const kills = Number(process.env.TALLYPLATE_KILLS ?? 30)
const script = path.join(import.meta.dirname, 'load-and-tell.ts')
const pristine = path.join(folder, 'pristine.sqlite')
const lists = path.join(folder, 'lists')
const numbers = Array.from({ length: 1_500 }, (_, at) => String(at).padStart(5, '0'))

/** Half of what there is changes, and as much again comes. */
function writeLists(): void {
  mkdirSync(lists)
  const models = numbers.map(number => `Ostrel,OX ${number},washer`).join('\n')
  const fitments = numbers.map(number => `includes,drain-pump,Ostrel,OX ${number},Dealer list`).join('\n')
  const offers = numbers.map((number, at) => `DEALER,1E5,${number}.50,${at + 2}`).join('\n')
  writeFileSync(path.join(lists, 'models.csv'), `brand,model_number,appliance_type\n${models}\n`)
  writeFileSync(path.join(lists, 'fitments.csv'), `says,family,brand,model_number,source\n${fitments}\n`)
  writeFileSync(path.join(lists, 'offers.csv'), `supplier,part_number,price,from_quantity\n${offers}\n`)
}

/** Every row of the file, after SQLite has recovered it. */
function fingerprint(file: string): string {
  const database = openDatabase(file)
  try {
    expect(verifyDatabase(database).filter(({ ok }) => !ok)).toEqual([])
    return createHash('sha256')
      .update(JSON.stringify(dumpOf(database)))
      .digest('hex')
  } finally {
    database.close()
  }
}

/** Loads in a program of its own, killed after so many milliseconds. Gives how long it took; null where it was killed first. */
async function load(file: string, given: string, killAfter = Infinity): Promise<number | null> {
  const child = fork(script, [file, given], { stdio: ['ignore', 'ignore', 'pipe', 'ipc'] })
  const ended = once(child, 'exit')
  await Promise.race([once(child, 'message'), ended.then(() => failed(child.stderr?.read()))])
  const began = performance.now()
  const done = once(child, 'message').then(() => performance.now() - began)
  const took = await (killAfter === Infinity ? done : Promise.race([done, wait(killAfter, null)]))
  child.kill('SIGKILL')
  await ended
  return took
}

function failed(why: unknown): never {
  throw new Error(`the loading program ended before it began: ${why}`)
}

let before: string
let after: string
let usual: number
beforeAll(async () => {
  writeLists()
  const start = path.join(folder, 'start')
  mkdirSync(start)
  for (const [name, text] of Object.entries(smallCatalogue))
    if (name !== 'opening_stock.csv') writeFileSync(path.join(start, name), text)
  const whole = path.join(folder, 'whole.sqlite')
  await load(pristine, start)
  before = fingerprint(pristine)
  copyFileSync(pristine, whole)
  usual = (await load(whole, lists)) ?? 0
  after = fingerprint(whole)
}, 60_000)

/** One shop after the other is copied, loaded, and its program killed: the moments are spread evenly, and the machine's own load shifts each. */
async function killSome(moments: readonly number[], lane: number): Promise<string[]> {
  const found: string[] = []
  for (const [round, share] of moments.entries()) {
    const file = path.join(folder, `shop-${lane}-${round}.sqlite`)
    copyFileSync(pristine, file)
    await load(file, lists, share * usual * 2.5)
    found.push(fingerprint(file))
    for (const ending of ['', '-wal', '-shm']) rmSync(`${file}${ending}`, { force: true })
  }
  return found
}

test(`a load killed at ${kills} random moments leaves the shop exactly as before or exactly as after`, async () => {
  expect(after).not.toBe(before)
  const moments = Array.from({ length: kills }, (_, at) => (at + 0.5) / kills)
  const [even, odd] = [moments.filter((_, at) => at % 2 === 0), moments.filter((_, at) => at % 2 === 1)]
  const found = (await Promise.all([killSome(even, 0), killSome(odd, 1)])).flat()
  expect(found).toHaveLength(kills)
  expect(new Set(found)).toEqual(new Set([before, after]))
}, 600_000)
