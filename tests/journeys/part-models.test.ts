import papaparse from 'papaparse'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { killStragglers } from '../hosts/run-program.ts'
import { checkAccessibility } from './check-accessibility.ts'
import { type Counter, openCounter } from './open-counter.ts'

// The models of a part that goes into thousands, by keyboard alone.

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

const universalHose = 'DR-10401'

async function atItsModels(
  journey: (page: Page) => Promise<void>,
  options?: Parameters<Counter['newPage']>[0],
): Promise<void> {
  const { page, faults } = await counter.newPage(options)
  await page.getByRole('combobox', { name: 'Model no.' }).waitFor()
  await page.keyboard.press('F2')
  await page.keyboard.type(universalHose)
  await page.locator('.part-alone').waitFor()
  await page.keyboard.press('F10')
  await page.locator('.model-sheet__model').first().waitFor()
  await journey(page)
  expect(faults).toEqual([])
  await page.context().close()
}

const count = (page: Page) => page.locator('.model-sheet__count')
const says = (page: Page, words: RegExp) =>
  expect.poll(() => count(page).textContent(), patience).toMatch(words)
const rowsDrawn = (page: Page) => page.locator('.model-sheet__model').count()

test('F10 lists every model of the part, words narrow it, F8 copies what is left, and Esc goes back', async () => {
  await atItsModels(async page => {
    expect(await page.getByRole('dialog').getByRole('heading').textContent()).toBe(
      `Models of ${universalHose}`,
    )
    await says(page, /^It goes into [\d,]+ models of 14 brands\.$/)
    const [, all = ''] = /into ([\d,]+) models/.exec((await count(page).textContent()) ?? '') ?? []
    expect(Number(all.replace(',', ''))).toBeGreaterThan(3000)
    // Only what is in sight is drawn.
    expect(await rowsDrawn(page)).toBeLessThan(60)

    await page.keyboard.type('brennick 47')
    await says(page, new RegExp(`^\\d+ of ${all} models match “brennick 47”, of Brennick\\.$`))
    const [, left = ''] = /^(\d+) of/.exec((await count(page).textContent()) ?? '') ?? []
    await page.keyboard.press('F8')
    const copied = page.locator('.model-sheet__copy [role=status]')
    await expect
      .poll(() => copied.textContent(), patience)
      .toBe(`Copied ${left} models. They are on the clipboard.`)
    const text = await page.evaluate(() => navigator.clipboard.readText())
    const { data } = papaparse.parse<Record<string, string>>(text, { header: true, skipEmptyLines: true })
    expect(data).toHaveLength(Number(left))
    for (const row of data) {
      expect(row.brand).toBe('Brennick')
      expect(row.model_number?.replace(/[^\p{L}\p{N}]/gu, '')).toContain('47')
    }

    await page.keyboard.press('F2')
    await page.keyboard.type('zzzz')
    await says(page, /^None of [\d,]+ models matches “zzzz”\. Type less of it\.$/)

    await page.keyboard.press('Escape')
    await page.getByRole('dialog').waitFor({ state: 'hidden' })
    const field = page.getByRole('textbox', { name: /^Part/ })
    await expect.poll(() => field.evaluate(element => element === document.activeElement)).toBe(true)
    expect(await field.inputValue()).toBe(universalHose)
  })
})

test('the last of thousands is reached with End', async () => {
  await atItsModels(async page => {
    await page.keyboard.press('Tab')
    await page.keyboard.press('End')
    const last = page.locator('.long-list__row').last()
    await expect
      .poll(
        () => last.evaluate(row => row.getAttribute('aria-posinset') === row.getAttribute('aria-setsize')),
        patience,
      )
      .toBe(true)
    await expect.poll(() => last.locator('.number').textContent(), patience).toMatch(/\w/)
  })
})

test.each([
  ['dark', { colorScheme: 'dark' }],
  ['forced colours', { forcedColors: 'active' }],
  // At 200 % a window of 1280 by 800 has so much room.
  ['200 %', { viewport: { width: 640, height: 400 } }],
] as const)('nothing keeps anybody out, and nothing runs off the side: %s', async (_name, options) => {
  await atItsModels(async page => {
    if ('colorScheme' in options) await checkAccessibility(page)
    const over = await page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    )
    expect(over).toBeLessThanOrEqual(0)
  }, options)
})
