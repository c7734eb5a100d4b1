import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { request } from 'node:http'
import path from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { type BrowserHost, openBrowserHost } from '../../electron/hosts/browser-host.ts'
import { contentSecurityPolicy } from '../../electron/hosts/content-security-policy.ts'
import { Refusal } from '../../electron/requests/refusal.ts'
import { enterLoopback, type LoopbackDoor } from './loopback-door.ts'
import { makeSmallShop, type SmallShop } from './small-shop.ts'

let shop: SmallShop
let host: BrowserHost
let door: LoopbackDoor

const settings = (port = 0) => ({
  engine: { databaseFile: shop.databaseFile, sampleFolder: null, device: 'test-counter' },
  port,
  pageFolder: path.join(shop.folder, 'page'),
})

beforeAll(async () => {
  shop = await makeSmallShop()
  mkdirSync(path.join(shop.folder, 'page/assets'), { recursive: true })
  writeFileSync(path.join(shop.folder, 'page/index.html'), '<!doctype html><title>page</title>')
  writeFileSync(path.join(shop.folder, 'page/assets/index-D79Hvorq.js'), 'export {}')
  host = await openBrowserHost(settings())
  door = await enterLoopback(host.newAddress())
})
afterAll(async () => {
  await host.close()
  shop.remove()
})

interface Sent {
  readonly method?: string
  readonly path?: string
  readonly headers?: Record<string, string>
  readonly body?: string
}

/** Sends what a test says, word for word: `fetch` would mend the very headers that are at stake. */
function send({ method = 'GET', path = '/', headers = {}, body }: Sent) {
  return new Promise<{ status: number; headers: NodeJS.Dict<string | string[]>; body: string }>(
    (resolve, reject) => {
      const sending = request(
        {
          host: '127.0.0.1',
          port: host.port,
          method,
          path,
          headers: { host: `127.0.0.1:${host.port}`, cookie: door.cookie, ...headers },
        },
        response => {
          let text = ''
          response.setEncoding('utf8').on('data', piece => {
            text += piece
          })
          response.on('end', () =>
            resolve({ status: response.statusCode ?? 0, headers: response.headers, body: text }),
          )
        },
      )
      sending.on('error', reject)
      sending.end(body)
    },
  )
}

const asking: Sent = {
  method: 'POST',
  path: '/ask/stock-ledger.list-on-hand',
  headers: { 'content-type': 'application/json' },
  body: '{}',
}

async function check(given: Sent, expected: number): Promise<void> {
  const answer = await send({ ...asking, ...given, headers: { ...asking.headers, ...given.headers } })
  expect(answer.status).toBe(expected)
  expect(answer.body.includes('00480122')).toBe(expected === 200)
}

test('the page that was let in is answered', () => check({}, 200))

test.each<[string, Sent, number]>([
  ['without the cookie', { headers: { cookie: '' } }, 401],
  ['with a cookie that was guessed', { headers: { cookie: 'tallyplate-1=guess' } }, 401],
  ['under a name that a foreign site gave this machine', { headers: { host: 'shop.example' } }, 421],
  ['from a page of another site', { headers: { origin: 'https://shop.example' } }, 403],
  ['as a form would send it', { headers: { 'content-type': 'text/plain' } }, 415],
  ['as something that is not JSON', { body: '{half' }, 400],
  ['with more than any question needs', { body: JSON.stringify({ part: 'x'.repeat(1_100_000) }) }, 413],
  ['by another method', { method: 'GET' }, 405],
])('a question %s is turned away', (_title, given, expected) => check(given, expected))

test('the one-time address works once and leads to a clean one', async () => {
  const address = host.newAddress()
  const first = await fetch(address, { redirect: 'manual' })
  expect(first.status).toBe(303)
  expect(first.headers.get('location')).toBe('/')
  expect(first.headers.get('set-cookie')).toMatch(
    /^tallyplate-\d+=[\w-]{43}; Path=\/; HttpOnly; SameSite=Strict$/,
  )
  expect((await fetch(address, { redirect: 'manual' })).status).toBe(401)
})

test('the page comes with its policy, and is asked for anew each time', async () => {
  const page = await send({})
  expect(page.status).toBe(200)
  expect(page.body).toContain('<title>page</title>')
  expect(page.headers).toMatchObject({
    'content-type': 'text/html; charset=utf-8',
    'content-security-policy': contentSecurityPolicy,
    'x-content-type-options': 'nosniff',
    'referrer-policy': 'no-referrer',
    'cache-control': 'no-cache',
  })
  for (const rule of [
    "default-src 'none'",
    "script-src 'self'",
    "frame-ancestors 'none'",
    "form-action 'none'",
  ])
    expect(contentSecurityPolicy).toContain(rule)
})

test('a file named by its content is kept by the browser, an answer never', async () => {
  const script = await send({ path: '/assets/index-D79Hvorq.js' })
  expect(script.headers).toMatchObject({
    'content-type': 'text/javascript; charset=utf-8',
    'cache-control': 'private, max-age=31536000, immutable',
  })
  const answer = await send(asking)
  expect(answer.headers['cache-control']).toBe('no-store')
})

test.each(['/../shop.sqlite', '/..%2fshop.sqlite', '/shop.sqlite', '/absent.js', '/assets'])(
  'nothing outside the page is served: %s',
  async file => {
    expect((await send({ path: file })).status).toBe(404)
  },
)

test('a stranger gets no file either', async () => {
  expect((await send({ headers: { cookie: '' } })).status).toBe(401)
  expect((await send({ path: '/assets/index-D79Hvorq.js', headers: { cookie: '' } })).status).toBe(401)
})

test('only this machine itself is listened to', async () => {
  const elsewhere = await new Promise(resolve => {
    const sending = request({ host: '::1', port: host.port }, () => resolve('answered'))
    sending.on('error', () => resolve('nobody there'))
    sending.end()
  })
  expect(elsewhere).toBe('nobody there')
})

async function refusalOf(attempt: Promise<BrowserHost>) {
  try {
    await (await attempt).close()
  } catch (thrown) {
    if (thrown instanceof Refusal) return thrown.problem
    throw thrown
  }
  throw new Error('the host opened')
}

test('a second host on the same file is refused, with where the first one is', async () => {
  expect(await refusalOf(openBrowserHost(settings()))).toEqual({
    code: 'already-running',
    file: shop.databaseFile,
    pid: process.pid,
    port: host.port,
  })
})

test('a port that is taken is refused', async () => {
  const other = { ...settings(host.port).engine, databaseFile: path.join(shop.folder, 'other.sqlite') }
  expect(await refusalOf(openBrowserHost({ ...settings(host.port), engine: other }))).toEqual({
    code: 'port-busy',
    port: host.port,
  })
})

test('the note of a host that is no more is taken over, and taken away at the end', async () => {
  const databaseFile = path.join(shop.folder, 'stale.sqlite')
  const note = `${databaseFile}.host.json`
  writeFileSync(note, JSON.stringify({ pid: 1, port: host.port, secret: 'of a host that is no more' }))
  const taken = await openBrowserHost({ ...settings(), engine: { ...settings().engine, databaseFile } })
  expect(JSON.parse(readFileSync(note, 'utf8'))).toMatchObject({ pid: process.pid, port: taken.port })
  await taken.close()
  expect(existsSync(note)).toBe(false)
})

test('a note that cannot be read keeps nobody out', async () => {
  const databaseFile = path.join(shop.folder, 'unreadable.sqlite')
  writeFileSync(`${databaseFile}.host.json`, '{half')
  const taken = await openBrowserHost({ ...settings(), engine: { ...settings().engine, databaseFile } })
  await taken.close()
})

test('a shop that cannot be opened is said by every answer, and the host does not hang', async () => {
  const databaseFile = path.join(shop.folder, 'damaged.sqlite')
  writeFileSync(databaseFile, 'no database at all')
  const damaged = await openBrowserHost({ ...settings(), engine: { ...settings().engine, databaseFile } })
  const entered = await enterLoopback(damaged.newAddress())
  const { status, reply } = await entered.ask('stock-ledger.list-on-hand', {})
  expect(status).toBe(409)
  expect(reply).toMatchObject({ ok: false, problem: { code: 'database-damaged', file: databaseFile } })
  await damaged.close()
  expect(readFileSync(databaseFile, 'utf8')).toBe('no database at all')
})

test('when the engine dies, whoever waits is answered, the host says so and closes itself', async () => {
  const databaseFile = path.join(shop.folder, 'dying.sqlite')
  const engineFile = path.join(shop.folder, 'dying-engine.mjs')
  writeFileSync(
    engineFile,
    "import { parentPort } from 'node:worker_threads'\nparentPort.on('message', () => process.exit(7))\n",
  )
  const dying = await openBrowserHost({
    ...settings(),
    engine: { ...settings().engine, databaseFile },
    engineFile,
  })
  const entered = await enterLoopback(dying.newAddress())
  const { status, reply } = await entered.ask('stock-ledger.list-on-hand', {})
  expect(status).toBe(500)
  expect(reply).toMatchObject({ ok: false, problem: { code: 'unexpected' } })
  expect(await dying.died).toMatch(
    /^The engine of Tallyplate stopped \(its thread ended with code 7; reference \w+\)\. Start Tallyplate again\.$/,
  )
  await expect(entered.ask('stock-ledger.list-on-hand', {})).rejects.toThrow()
  expect(existsSync(`${databaseFile}.host.json`)).toBe(false)
})
