import { afterAll, beforeAll, expect, test } from 'vitest'
import { contentSecurityPolicy } from '../../electron/hosts/content-security-policy.ts'
import type { TallyplateBridge } from '../../renderer/bridge/desktop-transport.ts'
import type { Reply } from '../../shared-schemas/request.ts'
import { launchShell, type RunningShell } from '../stand-in/launch.ts'
import { makeSmallShop, type SmallShop } from './small-shop.ts'

// The built program under the stand-in for Electron (tests/stand-in/README.md says what that proves), its page in a
// real Chromium.

let shop: SmallShop
let shell: RunningShell

beforeAll(async () => {
  shop = await makeSmallShop()
  shell = await launchShell(shop.databaseFile)
})
afterAll(async () => {
  await shell.tidyUp()
  shop.remove()
})

/** Asks as the page's own script can: through the one function that the preload script put there. */
function ask(name: string, input: unknown): Promise<Reply> {
  return shell.page.evaluate(
    ([name, input]) => {
      const bridge: TallyplateBridge | undefined = window.tallyplate
      if (bridge === undefined) throw new Error('the page has no bridge')
      return bridge.ask(name, input)
    },
    [name, input] as const,
  )
}

test('the page asks the engine, and is answered through both processes', async () => {
  const book = await ask('stock-ledger.list-on-hand', { location: 'VAN1' })
  expect(book).toEqual({
    ok: true,
    value: { rows: [{ location: 'VAN1', partNumber: '1E5', quantity: 2, reserved: 0, bin: null }] },
  })
})

test('a refusal crosses whole, with its code and facts', async () => {
  expect(await ask('stock-ledger.list-on-hand', { location: 'VAN9' })).toEqual({
    ok: false,
    problem: { code: 'location-not-found', typed: 'VAN9', known: ['SHOP', 'VAN1'] },
  })
  expect(await ask('catalogue.burn', {})).toMatchObject({ ok: false, problem: { code: 'unknown-request' } })
})

test('the page gets one function, and neither Node nor Electron', async () => {
  const found = await shell.page.evaluate(() => ({
    bridge: Object.keys(window.tallyplate ?? {}),
    isFrozen: Object.isFrozen(window.tallyplate),
    reached: ['require', 'process', 'module', 'ipcRenderer', 'sendToMain', 'hearFromMain'].filter(
      name => name in globalThis,
    ),
  }))
  expect(found).toEqual({ bridge: ['ask'], isFrozen: true, reached: [] })
})

test('the page itself keeps to the policy', async () => {
  await shell.page.locator('body > div > *').first().waitFor()
  expect(shell.consoleLines.filter(line => /Content Security Policy|Trusted/i.test(line))).toEqual([])
})

test('the page is bound by the policy: inline script does not run, and nothing is fetched from elsewhere', async () => {
  const served = await shell.page.evaluate(async () => {
    const response = await fetch('/index.html')
    return response.headers.get('content-security-policy')
  })
  expect(served).toBe(contentSecurityPolicy)

  const outcome = await shell.page.evaluate(async () => {
    const directives: string[] = []
    document.addEventListener('securitypolicyviolation', event => directives.push(event.effectiveDirective))
    const script = document.createElement('script')
    try {
      script.text = 'globalThis.ran = true'
      document.head.append(script)
    } catch {
      // Trusted types refuse the text before the policy refuses the script.
    }
    const fetched = await fetch('https://shop.example/').then(
      () => 'fetched',
      () => 'refused',
    )
    await new Promise(resolve => setTimeout(resolve, 50))
    return { ran: 'ran' in globalThis, fetched, directives }
  })
  expect(outcome.ran).toBe(false)
  expect(outcome.fetched).toBe('refused')
  expect(outcome.directives).toContain('connect-src')
})

test('the window does not leave its page and opens no other', async () => {
  const address = shell.page.url()
  await shell.page.evaluate(() => {
    location.href = 'https://shop.example/elsewhere'
  })
  await expect
    .poll(async () => (await shell.report()).refusedNavigations)
    .toEqual(['https://shop.example/elsewhere'])
  await shell.page.evaluate(() => {
    window.open('https://shop.example/another')
  })
  await expect
    .poll(async () => (await shell.report()).refusedWindows)
    .toEqual(['https://shop.example/another'])
  expect(shell.page.url()).toBe(address)
  expect(await ask('application.read-start-up', {})).toMatchObject({ ok: true, value: { state: 'ready' } })
})

test.each([
  ['another origin', { url: 'https://shop.example/', isOutermost: true }],
  ['another host of our own scheme', { url: 'tallyplate://elsewhere/index.html', isOutermost: true }],
  ['a frame inside the page', { url: 'tallyplate://shop/index.html', isOutermost: false }],
])('a question from %s is refused', async (_title, frame) => {
  const reply = await shell.order({ order: 'ask-from-frame', ...frame, name: 'stock-ledger.list-on-hand' })
  expect(reply).toEqual({ ok: false, problem: { code: 'page-not-admitted' } })
})

test('no permission is granted but to put a slip on the clipboard', async () => {
  const decide = (permission: string) => shell.order({ order: 'request-permission', permission })
  for (const permission of ['media', 'geolocation', 'notifications', 'clipboard-read', 'openExternal'])
    expect(await decide(permission), permission).toBe(false)
  expect(await decide('clipboard-sanitized-write')).toBe(true)
})

test('the menu has standard roles and no command of its own', async () => {
  const { menuRoles } = await shell.report()
  expect(menuRoles).toContain('editMenu')
  expect(menuRoles).not.toContain('a command of its own')
  expect(menuRoles).not.toContain('toggleDevTools')
})

test('starting the program again brings its window forward', async () => {
  const before = (await shell.report()).timesFocused
  await shell.order({ order: 'start-again' })
  expect((await shell.report()).timesFocused).toBe(before + 1)
})

test('quitting closes the database in order', async () => {
  expect(await shell.quit()).toBe(0)
})

test('when the engine dies, whoever waits is answered, the person is told, and the program ends', async () => {
  const second = await launchShell(shop.databaseFile)
  try {
    await second.order({ order: 'kill-engine' })
    expect(await second.exitCode).toBe(1)
  } finally {
    await second.tidyUp()
  }
})
