import { fork } from 'node:child_process'
import { once } from 'node:events'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import { v7 as newId } from 'uuid'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { openApplication } from '../../../electron/application.ts'
import { openDatabase } from '../../../electron/database/open-database.ts'
import { verifyDatabase } from '../../../electron/database/verify-database.ts'
import { withCatalogueFolder } from '../../builders/catalogue-folder.ts'
import { ledgerCatalogue } from './ledger-catalogue.ts'

const folder = mkdtempSync(path.join(tmpdir(), 'tallyplate-killed-ledger-'))
const file = path.join(folder, 'shop.sqlite')
afterAll(() => rmSync(folder, { recursive: true, force: true }))

/** The bench kills more often. */
const kills = Number(process.env.TALLYPLATE_KILLS ?? 30)
const script = path.join(import.meta.dirname, 'record-and-tell.ts')

beforeAll(async () => {
  const application = openApplication({
    databaseFile: file,
    sampleFolder: null,
    now: () => new Date(),
    newId: () => newId(),
    device: 'counter',
    logDefect: (_reference, _request, defect) => {
      throw defect
    },
  })
  await withCatalogueFolder(ledgerCatalogue, folder =>
    application.ask('catalogue.load-files', { path: folder }),
  )
  application.close()
})

/** Records until it is killed, some milliseconds after it began. Gives the ids that were acknowledged by then. */
async function recordUntilKilled(milliseconds: number): Promise<string[]> {
  const child = fork(script, [file], { stdio: ['ignore', 'ignore', 'inherit', 'ipc'] })
  const acknowledged: string[] = []
  const ended = once(child, 'exit')
  const ready = new Promise<void>(resolve => {
    child.on('message', (message: { readonly ready?: true; readonly acknowledged?: string }) => {
      if (message.ready) resolve()
      if (message.acknowledged !== undefined) acknowledged.push(message.acknowledged)
    })
  })
  await Promise.race([ready, ended])
  await wait(milliseconds)
  child.kill('SIGKILL')
  await ended
  return acknowledged
}

test(`of a program killed ${kills} times while it records, every acknowledged movement is there once`, async () => {
  const acknowledged = new Set<string>()
  for (let number = 0; number < kills; number++) {
    // Spread over forty milliseconds, in which some tens of movements are recorded; the machine's load shifts each.
    for (const id of await recordUntilKilled((number * 7) % 40)) acknowledged.add(id)
  }
  expect(acknowledged.size).toBeGreaterThan(kills)
  const database = openDatabase(file)
  const kept = [...database.tuples<[string, string]>('SELECT movement_id, reason FROM movement')]
  expect(kept.filter(([id]) => acknowledged.has(id))).toHaveLength(acknowledged.size)
  expect(new Set(kept.map(([id]) => id)).size).toBe(kept.length)
  // What was recorded and not yet acknowledged when it was killed: at most the one under way each time.
  expect(kept.length - acknowledged.size).toBeLessThanOrEqual(kills)
  expect(verifyDatabase(database).filter(({ ok }) => !ok)).toEqual([])
  database.close()
}, 600_000)
