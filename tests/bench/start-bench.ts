import { mkdtempSync, rmSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { type Browser, chromium } from 'playwright-core'
import { requireBrowser } from '../find-browser.ts'
import { start } from '../hosts/run-program.ts'
import { printTimings, summarise } from './measure.ts'

/** How long a person waits: from `npm start`'s process to a field that takes typing, on the sample shop. */
export async function run(): Promise<void> {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'tallyplate-start-bench-'))
  const browser = await chromium.launch({ executablePath: requireBrowser(), chromiumSandbox: false })
  try {
    // Builds the screen where its sources have changed, so that the starts that are timed do not.
    await startOnce(browser, path.join(folder, 'warming-up.sqlite'))
    const databaseFile = path.join(folder, 'shop.sqlite')
    const first = await startOnce(browser, databaseFile)
    printTimings('first start, the sample shop loaded, to a usable field', summarise([first]), {
      wanted: 'under 10000 ms',
    })
    const later: number[] = []
    for (let times = 0; times < 7; times += 1) later.push(await startOnce(browser, databaseFile))
    printTimings('later starts to a usable field', summarise(later), { wanted: 'p50 under 1000 ms' })
  } finally {
    await browser.close()
    rmSync(folder, { recursive: true, force: true })
  }
}

async function startOnce(browser: Browser, databaseFile: string): Promise<number> {
  const page = await browser.newPage()
  const startedAt = performance.now()
  const counter = start('electron/start/start.ts', ['--browser', '--no-open', '--file', databaseFile])
  const [address] = await counter.printed(/http:\/\/127\.0\.0\.1:\d+\/\?token=\S+/)
  await page.goto(address)
  await page.locator('input:focus').first().waitFor()
  const took = performance.now() - startedAt
  await page.close()
  counter.interrupt()
  await counter.ended
  return took
}
