import type { Locator, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { killStragglers } from '../hosts/run-program.ts'
import { checkAccessibility } from './check-accessibility.ts'
import { type Counter, openCounter } from './open-counter.ts'

// The families of the sample, their parts and their models, by keyboard alone.

let counter: Counter
beforeAll(async () => {
  counter = await openCounter()
})
afterAll(async () => {
  await counter?.close()
  killStragglers()
})

/** Other programs may keep the machine busy. */
const patience = { timeout: 15_000 }

async function atCatalogue(
  journey: (page: Page) => Promise<void>,
  options?: Parameters<Counter['newPage']>[0],
): Promise<void> {
  const { page, faults } = await counter.newPage(options)
  page.setDefaultTimeout(patience.timeout)
  await page.getByRole('combobox', { name: 'Model no.' }).waitFor()
  await page.keyboard.press('Alt+C')
  await page.locator('.catalogue .model-sheet__model').first().waitFor()
  await journey(page)
  expect(faults).toEqual([])
  await page.context().close()
}

const says = (locator: Locator, words: RegExp) =>
  expect.poll(() => locator.textContent(), patience).toMatch(words)
const families = (page: Page) => page.locator('.catalogue__families .model-sheet__count')
const models = (page: Page) => page.locator('.catalogue__chosen .model-sheet__count')

async function tabTo(page: Page, locator: Locator): Promise<void> {
  await locator.waitFor()
  for (let pressed = 0; pressed < 60; pressed++) {
    if (await locator.evaluate(element => element === document.activeElement)) return
    await page.keyboard.press('Tab')
  }
  throw new Error('Tab does not reach it')
}

test('a family is found, its parts and models are listed, a part’s models too, and all models again', async () => {
  await atCatalogue(async page => {
    await says(families(page), /^\d+ part families\.$/)
    await says(models(page), /^The catalogue has [\d,]+ models\.$/)
    await page.keyboard.type('drain pump bayonet')
    await says(families(page), /^1 of \d+ part families matches “drain pump bayonet”\.$/)
    await page.keyboard.press('ArrowDown')
    await page.keyboard.press('Enter')
    await says(page.locator('.catalogue__title'), /^Dishwasher drain pump, bayonet$/)
    await says(page.getByRole('region', { name: 'Cautions' }), /Isolate from the supply and prove it dead/)
    await says(models(page), /^It or one of its parts is listed for [\d,]+ models\. That is no verdict yet/)

    await tabTo(page, page.getByRole('button', { name: /^Its models/ }).first())
    await page.keyboard.press('Enter')
    await says(models(page), /^It goes into [\d,]+ models\.$/)
    await page.keyboard.press('F2')
    await page.keyboard.type('dishwasher 4')
    await says(models(page), /^[\d,]+ of [\d,]+ models match “dishwasher 4”/)
    await page.keyboard.press('F8')
    const copied = page.locator('.model-sheet__copy [role=status]')
    await says(copied, /^Copied [\d,]+ models\. They are on the clipboard\.$/)
    const text = await page.evaluate(() => navigator.clipboard.readText())
    expect(text.split('\r\n')[0]).toBe('brand,model_number,appliance_type,conditions')

    await page.keyboard.press('F6')
    await says(models(page), /^The catalogue has [\d,]+ models\.$/)
    await page.keyboard.press('Escape')
    const field = page.getByRole('textbox', { name: 'Find a part family' })
    await expect
      .poll(() => field.evaluate(element => element === document.activeElement), patience)
      .toBe(true)
  })
})

test.each([
  ['dark', { colorScheme: 'dark' }],
  // At 200 % a window of 1280 by 800 has so much room.
  ['200 %', { viewport: { width: 640, height: 400 } }],
] as const)('nothing keeps anybody out, and nothing runs off the side: %s', async (_name, options) => {
  await atCatalogue(async page => {
    await page.keyboard.type('drain pump bayonet')
    await says(families(page), /^1 of /)
    await page.keyboard.press('ArrowDown')
    await page.keyboard.press('Enter')
    await says(models(page), /listed for/)
    if ('colorScheme' in options) await checkAccessibility(page)
    const over = await page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    )
    expect(over).toBeLessThanOrEqual(0)
  }, options)
})
