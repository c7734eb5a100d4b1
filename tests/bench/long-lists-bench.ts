import { mkdtempSync, rmSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import type { Page } from 'playwright-core'
import { loadFiles } from '../../electron/catalogue/load-files.ts'
import { openDatabase } from '../../electron/database/open-database.ts'
import { openCounter } from '../journeys/open-counter.ts'
import { timeEmptyFrame } from './empty-frame.ts'
import { fillCatalogue, writeFitments } from './generate-catalogue.ts'
import { generateModels } from './generate-models.ts'
import { printTimings, summarise, written } from './measure.ts'

/**
 * Long lists in a real browser on the real host: the models of the part that goes into most, opened and narrowed key by
 * key, and all models narrowed key by key. `TALLYPLATE_BENCH_MODELS=1000000` takes the full size.
 */
export async function run(): Promise<void> {
  let part = ''
  const counter = await openCounter(async file => {
    part = await makeShop(file)
  })
  try {
    const { page } = await counter.newPage()
    await page.getByRole('combobox', { name: 'Model no.' }).waitFor()
    await watchPaints(page)
    await measurePart(page, part)
    await measureAll(page)
  } finally {
    await counter.close()
  }
}

const modelCount = Number(process.env.TALLYPLATE_BENCH_MODELS ?? 100_000)
const fitmentsOfModel = 10

/** A generated shop; gives the number of the part that is listed for most models. */
async function makeShop(file: string): Promise<string> {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'tallyplate-long-lists-'))
  const database = openDatabase(file)
  try {
    const models = generateModels(modelCount)
    const list = path.join(folder, 'fitments.csv')
    const { statements } = await writeFitments(list, models, modelCount * fitmentsOfModel)
    fillCatalogue(database, models, statements)
    await loadFiles(
      {
        database,
        openOwnHandle: () => ({ handle: database, release: () => {} }),
        now: () => new Date(),
        device: 'bench',
        recordOpeningStock: () => {
          throw new Error('there is no opening stock among fitments')
        },
      },
      { path: list, dryRun: false, strict: false, edition: false, showChanges: 0 },
      { report: () => {} },
    )
    const [[part] = ['']] = database.tuples<[string]>(
      `SELECT part_number FROM fitment_by_terms JOIN fitment_terms USING (terms_id) JOIN part USING (part_id)
       GROUP BY part_id ORDER BY sum(models) DESC LIMIT 1`,
    )
    return part
  } finally {
    database.close()
    rmSync(folder, { recursive: true, force: true })
  }
}

async function measurePart(page: Page, part: string): Promise<void> {
  await page.keyboard.press('F2')
  await page.keyboard.type(part)
  await page.locator('.part-alone').waitFor({ timeout: patience })
  const openings: number[] = []
  for (let opening = 0; opening < 10; opening++) {
    openings.push(await timeUntil(page, () => page.keyboard.press('F10'), 'It goes into'))
    await page.keyboard.press('Escape')
    await page.getByRole('dialog').waitFor({ state: 'hidden' })
  }
  await page.keyboard.press('F10')
  const title = await page.locator('.model-sheet__count').textContent({ timeout: patience })
  printTimings(`opening the models of ${part} (${title})`, summarise(openings))
  printTimings('keystroke to painted models of that part', summarise(await typeWords(page)), {
    wanted: 'p95 50 ms, aim 33 ms',
    reference: `an empty frame in the same page ${written(await timeEmptyFrame(page))} ms`,
  })
  await page.keyboard.press('Escape')
}

async function measureAll(page: Page): Promise<void> {
  await page.keyboard.press('Alt+C')
  await page.locator('.catalogue .model-sheet__count').last().waitFor({ timeout: patience })
  await page.keyboard.press('F2')
  printTimings(`keystroke to painted models of all ${modelCount}`, summarise(await typeWords(page)))
}

const patience = 120_000
/** Stretches of numbers, a brand, a type: what is typed leaves thousands, few, or none. */
const typed = ['12', '1234', 'korrel 7', 'washer 90', 'zz9']
/** Between two keys of a quick typist. */
const betweenKeysMilliseconds = 100

/** Each key, from the time stamp that the browser gave it to after the frame that tells how many are left. */
async function typeWords(page: Page): Promise<number[]> {
  const took: number[] = []
  for (const words of typed) {
    await page.keyboard.press('F2')
    await page.keyboard.press('Delete')
    await page.waitForTimeout(3 * betweenKeysMilliseconds)
    let soFar = ''
    for (const key of words) {
      soFar += key
      took.push(await timeUntil(page, () => page.keyboard.press(key), `“${soFar.trim()}”`, key === ' '))
      await page.waitForTimeout(betweenKeysMilliseconds)
    }
  }
  return took.filter(Number.isFinite)
}

/** Until the sentence over the list says this; not a number where the key changes nothing that is asked. */
async function timeUntil(
  page: Page,
  press: () => Promise<void>,
  words: string,
  isIdle = false,
): Promise<number> {
  if (isIdle) {
    await press()
    return Number.NaN
  }
  await page.evaluate(wanted => window.awaitWords(wanted), words)
  await press()
  return await page.evaluate(() => window.painted())
}

declare global {
  interface Window {
    awaitWords: (words: string) => void
    painted: () => Promise<number>
  }
}

function watchPaints(page: Page): Promise<void> {
  return page.evaluate(() => {
    let pressed = 0
    addEventListener('keydown', event => (pressed = event.timeStamp), true)
    let painted = Promise.resolve(Number.NaN)
    const afterPaint = () =>
      new Promise<number>(resolve =>
        requestAnimationFrame(() => {
          const { port1, port2 } = new MessageChannel()
          port1.onmessage = () => resolve(performance.now())
          port2.postMessage(0)
        }),
      )
    window.awaitWords = words => {
      painted = new Promise(resolve => {
        const watch = new MutationObserver(() => {
          const says = [...document.querySelectorAll('.model-sheet__count')].some(
            sentence => sentence.checkVisibility() && sentence.textContent.includes(words),
          )
          if (!says) return
          watch.disconnect()
          void afterPaint().then(now => resolve(now - pressed))
        })
        watch.observe(document.body, { subtree: true, childList: true, characterData: true })
      })
    }
    window.painted = () => painted
  })
}
