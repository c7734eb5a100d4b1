import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import type { Reply } from '../../shared-schemas/request.ts'
import { enterLoopback } from './loopback-door.ts'
import { killStragglers, type Running, start } from './run-program.ts'

let folder: string
beforeAll(() => {
  folder = mkdtempSync(path.join(os.tmpdir(), 'tallyplate-start-'))
})
afterAll(() => {
  killStragglers()
  rmSync(folder, { recursive: true, force: true })
})

const addressPattern = /^(http:\/\/127\.0\.0\.1:(\d+)\/\?token=[\w-]+)$/m

/** `npm start` on a machine whose data folder is ours alone. */
function startCounter(...given: string[]): Running {
  return start('electron/start/start.ts', ['--no-open', ...given], {
    XDG_DATA_HOME: folder,
    TALLYPLATE_FILE: '',
  })
}

const shopFile = () => path.join(folder, 'tallyplate/shop.sqlite')

test('the first start makes the sample shop, says where and why, and ends cleanly when interrupted', async () => {
  const counter = startCounter()
  const [, address = ''] = await counter.printed(addressPattern)
  const door = await enterLoopback(address)
  expect(await (await fetch(door.origin, { headers: { cookie: door.cookie } })).text()).toMatch(
    /<script type="module"/,
  )
  const { reply } = await door.ask('catalogue.read-summary', {})
  expect(reply.ok && (reply.value as { models: number }).models).toBeGreaterThan(3000)
  counter.interrupt()
  const ran = await counter.ended
  expect(ran.code).toBe(0)
  expect(ran.stdout).toMatch(/^The Counter is shown in a browser, because .+\.$/m)
  expect(ran.stderr).toMatch(/Loading the sample shop: \w+\.csv/)
  expect(existsSync(`${shopFile()}-wal`)).toBe(false)
  expect(existsSync(`${shopFile()}.host.json`)).toBe(false)
}, 60_000)

test('the second start is ready at once; a third beside it is refused in one sentence', async () => {
  const counter = startCounter()
  const [, address = '', port = ''] = await counter.printed(addressPattern)
  const door = await enterLoopback(address)
  const startUp: Reply = (await door.ask('application.read-start-up', {})).reply
  expect(startUp).toMatchObject({ ok: true, value: { state: 'ready', sampleShop: false } })

  const beside = await startCounter().ended
  expect(beside.code).toBe(2)
  expect(beside.stderr).toMatch(new RegExp(`^\\S+ is served already at http://127\\.0\\.0\\.1:${port} `))
  expect(beside.stderr.trimEnd().split('\n')).toHaveLength(1)

  const busy = await startCounter('--port', port, '--file', path.join(folder, 'other.sqlite')).ended
  expect(busy.code).toBe(2)
  expect(busy.stderr).toBe(
    `Port ${port} is taken by another program. Name a free one with --port, or leave --port out.\n`,
  )
  counter.interrupt()
  expect((await counter.ended).code).toBe(0)
})

test('a host that was killed leaves nothing that keeps the next one out', async () => {
  const counter = startCounter()
  await counter.printed(addressPattern)
  counter.kill()
  await counter.ended
  const next = startCounter()
  await next.printed(addressPattern)
  next.interrupt()
  expect((await next.ended).code).toBe(0)
})

test('a damaged shop is said in one sentence, and no empty one takes its place', async () => {
  const file = path.join(folder, 'damaged.sqlite')
  writeFileSync(file, 'no database at all')
  const ran = await startCounter('--file', file).ended
  expect(ran.code).toBe(2)
  expect(ran.stderr).toMatch(/^\S+damaged\.sqlite is damaged .*tallyplate restore <copy>/)
  expect(ran.stderr.trimEnd().split('\n')).toHaveLength(1)
})

test('wrong use is said in one sentence', async () => {
  const ran = await startCounter('--bowser').ended
  expect(ran).toMatchObject({ code: 2, stdout: '' })
  expect(ran.stderr).toBe('npm start has no option --bowser. Did you mean --browser?\n')
})
