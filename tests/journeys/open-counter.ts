import { mkdtempSync, rmSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core'
import { requireBrowser } from '../find-browser.ts'
import { start } from '../hosts/run-program.ts'

export interface Counter {
  /** A page of its own, in a browser that this shop knows; whatever goes wrong in it is gathered in `faults`. */
  readonly newPage: (options?: BrowserContextOptions) => Promise<CounterPage>
  readonly close: () => Promise<void>
}

export interface CounterPage {
  readonly page: Page
  /** Errors thrown in the page, logged by it, or of its content security policy. */
  readonly faults: readonly string[]
}

/** `npm start` on a fresh sample shop, or on one that was made ready before, shown by a real browser. */
export async function openCounter(prepare?: (file: string) => Promise<unknown>): Promise<Counter> {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'tallyplate-journey-'))
  await prepare?.(path.join(folder, 'shop.sqlite'))
  const program = start(
    'electron/start/start.ts',
    ['--browser', '--no-open', '--file', path.join(folder, 'shop.sqlite')],
    { XDG_DATA_HOME: folder },
  )
  const [, address = ''] = await program.printed(/^(http:\/\/127\.0\.0\.1:\d+\/\?token=[\w-]+)$/m)
  const browser = await chromium.launch({ executablePath: requireBrowser(), args: browserArguments })
  const cookies = await enter(browser, address)
  return {
    newPage: options => openPage(browser, new URL(address).origin, cookies, options),
    close: async () => {
      await browser.close()
      program.interrupt()
      await program.ended
      rmSync(folder, { recursive: true, force: true })
    },
  }
}

/** A browser that runs as root, without a graphics card, and calls nobody. */
export const browserArguments = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-dev-shm-usage',
  '--disable-background-networking',
  '--disable-component-update',
  '--no-first-run',
]

type Cookies = Parameters<Awaited<ReturnType<Browser['newContext']>>['addCookies']>[0]

/** The address lets one browser in, once; the cookie that it gave serves every page of these tests. */
async function enter(browser: Browser, address: string): Promise<Cookies> {
  const context = await browser.newContext()
  const page = await context.newPage()
  await page.goto(address)
  const cookies = await context.cookies()
  await context.close()
  return cookies
}

async function openPage(
  browser: Browser,
  origin: string,
  cookies: Cookies,
  options: BrowserContextOptions = {},
): Promise<CounterPage> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 720 }, ...options })
  await context.addCookies(cookies)
  await context.grantPermissions(['clipboard-read', 'clipboard-write'], { origin })
  const page = await context.newPage()
  page.setDefaultTimeout(5000)
  const faults: string[] = []
  page.on('pageerror', error => faults.push(error.message))
  page.on('console', message => {
    // A refusal is an answer: the browser alone calls its status an error.
    if (message.type() === 'error' && !message.text().includes('status of 409')) faults.push(message.text())
  })
  await page.goto(origin)
  return { page, faults }
}
