import path from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { type Application, openApplication } from '../../electron/application.ts'
import { type BrowserHost, openBrowserHost } from '../../electron/hosts/browser-host.ts'
import { exitCodeOf } from '../../electron/hosts/command-line/exit-code.ts'
import { surroundingsOf } from '../../electron/hosts/surroundings.ts'
import type { GivenInput, KnownRequestName } from '../../shared-schemas/index.ts'
import type { Reply } from '../../shared-schemas/request.ts'
import { enterLoopback, type LoopbackDoor } from './loopback-door.ts'
import { runTallyplate } from './run-program.ts'
import { makeSmallShop, type SmallShop } from './small-shop.ts'

let shop: SmallShop
let application: Application
let host: BrowserHost
let loopback: LoopbackDoor

beforeAll(async () => {
  shop = await makeSmallShop()
  const engine = { databaseFile: shop.databaseFile, sampleFolder: null, device: 'test-counter' }
  application = openApplication(surroundingsOf(engine))
  host = await openBrowserHost({ engine, port: 0, pageFolder: shop.folder })
  loopback = await enterLoopback(host.newAddress())
})
afterAll(async () => {
  application.close()
  await host.close()
  shop.remove()
})

interface Question<Name extends KnownRequestName> {
  readonly title: string
  readonly name: Name
  readonly input: GivenInput<Name>
  /** The same question on the command line, without `--file` and `--json`. */
  readonly typed: readonly string[]
  /** What the answer must hold, so that three doors cannot agree on nothing. */
  readonly holds: object
}

function question<Name extends KnownRequestName>(given: Question<Name>): Question<KnownRequestName> {
  return given as unknown as Question<KnownRequestName>
}

const questions = [
  question({
    title: 'a model number as printed',
    name: 'model-lookup.find-models',
    input: { text: 'QV-1042/B' },
    typed: ['find', 'QV-1042/B'],
    holds: { ok: true, value: { outcome: 'exact', openModels: 1 } },
  }),
  question({
    title: 'a number that is in no catalogue',
    name: 'model-lookup.find-models',
    input: { text: 'WWWW 99999 WWWW' },
    typed: ['find', 'WWWW 99999 WWWW'],
    holds: { ok: true, value: { outcome: 'none' } },
  }),
  question({
    title: 'a brand and how many',
    name: 'model-lookup.find-models',
    input: { text: 'QV 1042', brand: 'Quorvane', top: 2 },
    typed: ['find', 'QV 1042', '--brand', 'Quorvane', '--top', '2'],
    holds: { ok: true, value: { outcome: 'several', openModels: 2 } },
  }),
  question({
    title: 'more models than may be asked for',
    name: 'model-lookup.find-models',
    input: { text: 'QV 1042', top: 5000 },
    typed: ['find', 'QV 1042', '--top', '5000'],
    holds: { ok: false, problem: { code: 'malformed', where: 'top' } },
  }),
  question({
    title: 'a superseded part on a sound model',
    name: 'fit-check.judge-fit',
    input: { model: 'QV-1042/A', part: '00480121' },
    typed: ['fit', '--model', 'QV-1042/A', '--part', '00480121'],
    holds: { ok: true, value: { part: { current: '00480122', chain: ['00480121', '00480122'] } } },
  }),
  question({
    title: 'a date that decides',
    name: 'fit-check.judge-fit',
    input: { model: 'QV-1042/B', part: '00480122' },
    typed: ['fit', '--model', 'QV-1042/B', '--part', '00480122'],
    holds: { ok: true, value: { verdict: 'ask' } },
  }),
  question({
    title: 'the same with its date read',
    name: 'fit-check.judge-fit',
    input: { model: 'QV-1042/B', part: '00480122', made: '2018-03' },
    typed: ['fit', '--model', 'QV-1042/B', '--part', '00480122', '--made', '2018-03'],
    holds: { ok: true, value: { verdict: 'fits' } },
  }),
  question({
    title: 'a date that is none',
    name: 'fit-check.judge-fit',
    input: { model: 'QV-1042/B', part: '00480122', made: '2018-13' },
    typed: ['fit', '--model', 'QV-1042/B', '--part', '00480122', '--made', '2018-13'],
    holds: { ok: false, problem: { code: 'malformed', where: 'made' } },
  }),
  question({
    title: 'what goes into a model, with stock',
    name: 'fit-check.list-fitting-parts',
    input: { model: 'QV-1042/A' },
    typed: ['parts', '--model', 'QV-1042/A'],
    holds: { ok: true, value: { models: 1 } },
  }),
  question({
    title: 'what drains it',
    name: 'fit-check.list-fitting-parts',
    input: { model: 'QV-1042/A', function: 'drain' },
    typed: ['parts', '--model', 'QV-1042/A', '--function', 'drain'],
    holds: { ok: true, value: { families: [{ family: 'drain-pump-p1' }] } },
  }),
  question({
    title: 'the models of a part',
    name: 'fit-check.list-fitted-models',
    input: { part: '1E5' },
    typed: ['models', '--part', '1E5'],
    holds: { ok: true, value: { partNumber: '1E5', count: 1, models: [{ modelNumber: 'TB 77310' }] } },
  }),
  question({
    title: 'the models of a part that nobody has',
    name: 'fit-check.list-fitted-models',
    input: { part: '00480129' },
    typed: ['models', '--part', '00480129'],
    holds: { ok: false, problem: { code: 'part-not-found', typed: '00480129' } },
  }),
  question({
    title: 'the whole book',
    name: 'stock-ledger.list-on-hand',
    input: {},
    typed: ['onhand'],
    holds: {
      ok: true,
      value: {
        rows: [
          { location: 'SHOP', partNumber: '00480122', quantity: 4 },
          { location: 'VAN1', partNumber: '1E5', quantity: 2 },
        ],
      },
    },
  }),
  question({
    title: 'a place that is not there',
    name: 'stock-ledger.list-on-hand',
    input: { location: 'VAN9' },
    typed: ['onhand', '--location', 'VAN9'],
    holds: { ok: false, problem: { code: 'location-not-found', known: ['SHOP', 'VAN1'] } },
  }),
  question({
    title: 'whether the file is sound',
    name: 'database.verify',
    input: {},
    typed: ['verify'],
    holds: { ok: true, value: { ok: true } },
  }),
]

test.each(questions)('three doors give one reply: $title', async ({ name, input, typed, holds }) => {
  const reply = await application.ask(name, input)
  const overHttp = await loopback.ask(name, input)
  const ran = await runTallyplate([...typed, '--file', shop.databaseFile, '--json'])

  expect(reply).toMatchObject(holds)
  expect(overHttp.reply).toEqual(reply)
  expect(readReply(ran.stdout)).toEqual(reply)
  expect(overHttp.status).toBe(expectedStatus(reply))
  if (!reply.ok) expect(ran.code).toBe(exitCodeOf(reply.problem.code))
})

/** The command line prints the value alone, or the problem. */
function readReply(printed: string): unknown {
  const document = JSON.parse(printed) as object
  return 'problem' in document ? { ok: false, ...document } : { ok: true, value: document }
}

/** CONVENTIONS of the loopback host: 200 done, 400 malformed, 409 refused. */
function expectedStatus(reply: Reply): number {
  if (reply.ok) return 200
  return reply.problem.code === 'malformed' ? 400 : 409
}

test('a request that nobody knows is refused by every door that can be asked for it', async () => {
  const reply = await application.ask('catalogue.burn', {})
  expect(reply).toEqual({ ok: false, problem: { code: 'unknown-request', request: 'catalogue.burn' } })
  expect(await loopback.ask('catalogue.burn', {})).toEqual({ status: 400, reply })
})

test('loading the same files again changes nothing, through every door', async () => {
  const input = { path: shop.catalogueFolder }
  const reply = await application.ask('catalogue.load-files', input)
  expect(reply).toMatchObject({ ok: true, value: { rejected: [] } })
  expect((await loopback.ask('catalogue.load-files', input)).reply).toEqual(reply)
  const ran = await runTallyplate(['load', shop.catalogueFolder, '--file', shop.databaseFile, '--json'])
  expect(ran.code).toBe(0)
  expect(readReply(ran.stdout)).toEqual(reply)
})

test('a copy made by one door is refused by the others, for it is there already', async () => {
  const file = path.join(shop.folder, 'copy.sqlite')
  const ran = await runTallyplate(['backup', file, '--file', shop.databaseFile, '--json'])
  expect(ran.code).toBe(0)
  expect(JSON.parse(ran.stdout)).toMatchObject({ file })
  const refused = { ok: false, problem: { code: 'file-exists', file } }
  expect(await application.ask('database.back-up', { file })).toEqual(refused)
  expect(await loopback.ask('database.back-up', { file })).toEqual({ status: 409, reply: refused })
})
