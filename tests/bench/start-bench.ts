import { mkdtempSync, rmSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { type Browser, chromium } from 'playwright-core'
import { requireBrowser } from '../find-browser.ts'
import { start } from '../hosts/run-program.ts'
import { browserArguments } from '../journeys/open-counter.ts'
import { written } from './measure.ts'

/** From `npm start` on a shop that is there already to a field that takes the first key, in a browser that is open. */
export async function run(): Promise<void> {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'tallyplate-start-bench-'))
  const browser = await chromium.launch({ executablePath: requireBrowser(), args: browserArguments })
  try {
    const first = await timeStart(folder, browser)
    const again = [await timeStart(folder, browser), await timeStart(folder, browser)]
    console.log(`first start to a usable field, the sample loaded: ${written(first)} ms`)
    console.log(`second start to a usable field: ${again.map(written).join(' and ')} ms; wanted 1000 ms`)
  } finally {
    await browser.close()
    rmSync(folder, { recursive: true, force: true })
  }
}

async function timeStart(folder: string, browser: Browser): Promise<number> {
  const page = await browser.newPage()
  const since = performance.now()
  const program = start(
    'electron/start/start.ts',
    ['--browser', '--no-open', '--file', path.join(folder, 'shop.sqlite')],
    { XDG_DATA_HOME: folder },
  )
  const [, address = ''] = await program.printed(/^(http:\/\/127\.0\.0\.1:\d+\/\?token=[\w-]+)$/m)
  await page.goto(address)
  await page.locator('#plate-number:focus').waitFor()
  const took = performance.now() - since
  await page.close()
  program.interrupt()
  await program.ended
  return took
}
