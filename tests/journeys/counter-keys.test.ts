import type { Locator, Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest'
import { killStragglers } from '../hosts/run-program.ts'
import { type Counter, openCounter } from './open-counter.ts'
import { scanWith } from './scan-with.ts'
import { typeByHand } from './type-by-hand.ts'

// What the keys do where they could do harm or lose their way: taking a doubtful model, walking the card, the clipboard,
// and a window so small that most of the page lies outside it.

let counter: Counter
let page: Page

beforeAll(async () => {
  counter = await openCounter()
})
afterEach(() => page?.context().close())
afterAll(async () => {
  await counter?.close()
  killStragglers()
})

/** What a browser at 200 % has of a window of 1280 by 720. */
const zoomed = { viewport: { width: 640, height: 360 }, deviceScaleFactor: 2 }

async function open(options?: Parameters<Counter['newPage']>[0]): Promise<void> {
  page = (await counter.newPage(options)).page
  await plateField().waitFor()
}

const plateField = () => page.getByRole('combobox', { name: 'Model no.' })
const filterField = () => page.getByRole('textbox', { name: /^What is wanted/ })
const partCheck = () => page.getByRole('region', { name: 'Part in the hand' })
const models = () => page.getByRole('listbox', { name: 'Models' }).getByRole('option')
const lines = () => page.locator('[data-family-line]')

const type = (text: string) => typeByHand(page, text)
const press = async (...keys: string[]) => {
  for (const key of keys) await page.keyboard.press(key)
}
const untilFocused = (locator: Locator) =>
  expect.poll(() => locator.evaluate(element => element === document.activeElement)).toBe(true)

test('a doubtful model is taken by the second Enter only, and what was typed stays as typed', async () => {
  await open()
  await type('ODW4S20/02')
  await page.getByText('No model has exactly this number', { exact: false }).waitFor()
  await press('Enter')
  await expect.poll(() => models().first().getAttribute('aria-selected')).toBe('true')
  expect(await page.locator('.one-model').count()).toBe(0)
  await untilFocused(plateField())

  await press('Enter')
  await page.getByText('Chosen at the counter; the plate was read as “ODW4S20/02”.').waitFor()
  await untilFocused(filterField())
  expect(await plateField().inputValue()).toBe('ODW4S20/02')
})

test('a scanner that sends a number and Enter at once is answered as one who waits', async () => {
  await open()
  await type('ODW4520/02')
  await press('Enter')
  await untilFocused(filterField())
  expect(await page.locator('.one-model').count()).toBe(1)
  // It went onto the plate from wherever the focus was.
  await press('F2')
  await scanWith(page, 'ODW4530/02')
  await expect.poll(() => plateField().inputValue(), { timeout: 5000 }).toBe('ODW4530/02')
  await untilFocused(filterField())
})

test('a part that is scanned is the part in the hand, and the undo label puts back what was', async () => {
  await open()
  await type('ODW4512/01')
  await scanWith(page, '..P.000517405')
  await partCheck().getByText('Does not fit', { exact: true }).first().waitFor()
  await page.getByText('In the hand: 000517405.', { exact: false }).waitFor()
  expect(await plateField().inputValue()).toBe('ODW4512/01')
  await scanWith(page, '..UNDO')
  await page.getByText('Taken back: no part is in the hand.').waitFor()
  await scanWith(page, 'BAG/77-A')
  await page.getByText('Nothing here has the code BAG/77-A.').waitFor()
  await page.getByRole('form', { name: 'Attach the code' }).waitFor()
})

test('a first Enter on one model does not take another that the arrows then lead to', async () => {
  await open()
  await type('ODW4530')
  await expect.poll(() => models().count()).toBe(6)
  await press('ArrowDown', 'Enter', 'ArrowDown', 'Enter')
  await expect.poll(() => models().nth(1).getAttribute('aria-selected')).toBe('true')
  expect(await page.locator('.one-model').count()).toBe(0)
  expect(await plateField().getAttribute('aria-activedescendant')).toBe(
    await models().nth(1).getAttribute('id'),
  )
})

test('arrows walk the lines of the card, Enter closes what it opened, and up leads back to the filter', async () => {
  await open()
  await type('ODW4512/01')
  await expect.poll(() => lines().count()).toBeGreaterThan(10)
  await press('Enter', 'ArrowDown', 'ArrowDown')
  await untilFocused(lines().nth(1))
  await press('Enter')
  await expect.poll(() => lines().nth(1).getAttribute('aria-expanded')).toBe('true')
  await press('Enter')
  await expect.poll(() => lines().nth(1).getAttribute('aria-expanded')).toBe('false')
  await press('ArrowUp', 'ArrowUp')
  await untilFocused(filterField())
})

test('where another part fits in place of the one in the hand, Enter on its number asks about that one', async () => {
  await open()
  // The terminals of this drain pump are wider than the appliance's.
  await type('ODW4512/01')
  await press('F2')
  await type('000517405')
  await partCheck().getByText('Does not fit', { exact: true }).first().waitFor()
  const instead = page.locator('.part-check__instead').getByRole('button').first()
  const number = await instead.textContent()
  await tabTo(instead)
  await press('Enter')
  await partCheck().getByText('Fits', { exact: true }).first().waitFor()
  expect(await partCheck().textContent()).toContain(number)
})

test('with nothing to copy the clipboard keeps what it had', async () => {
  await open()
  await page.evaluate(() => navigator.clipboard.writeText('kept'))
  await press('F8')
  await page.getByText('Nothing to copy yet', { exact: false }).waitFor()
  expect(await page.evaluate(() => navigator.clipboard.readText())).toBe('kept')
})

test('a whole plate pasted keeps its number on one line', async () => {
  await open()
  await type('MODEL NO. ODW4512/01 OSTREL 230V 50Hz')
  // Until the last word is known for what it is, its characters stand in cells as well.
  const cells = page.locator('.cell')
  await expect.poll(() => cells.count()).toBe(9)
  const tops = await cells.evaluateAll(all => all.map(cell => Math.round(cell.getBoundingClientRect().top)))
  expect(new Set(tops).size).toBe(1)
})

test('at 200 % what has the focus is always in sight', async () => {
  await open(zoomed)
  await type('ODW4530')
  await press('F2')
  await type('00480130')
  await partCheck().getByText('Ask', { exact: true }).first().waitFor()
  await press('Escape')
  for (let pressed = 0; pressed < 25; pressed++) {
    expect(await focusOutOfSight()).toBeUndefined()
    await press('Tab')
  }
})

test('at 200 % the confirmation that the slip was copied comes into sight', async () => {
  await open(zoomed)
  await type('ODW4512/01')
  await press('F2')
  await type('00480121')
  await partCheck().getByText('Fits', { exact: true }).first().waitFor()
  await press('F8')
  const confirmation = page.getByText('Copied. It is on the clipboard.')
  await confirmation.waitFor()
  const isInSight = () =>
    confirmation.evaluate(shown => {
      const { top, bottom } = shown.getBoundingClientRect()
      return top >= 0 && bottom <= innerHeight
    })
  await expect.poll(isInSight).toBe(true)
  await press('Escape')
  await untilFocused(plateField())
})

async function tabTo(wanted: Locator): Promise<void> {
  for (let pressed = 0; pressed < 40; pressed++) {
    if (await wanted.evaluate(element => element === document.activeElement)) return
    await press('Tab')
  }
  throw new Error('Tab does not reach it')
}

/** What has the focus, when no part of it is inside the window. */
function focusOutOfSight(): Promise<string | undefined> {
  return page.evaluate(() => {
    const element = document.activeElement
    if (element === null || element === document.body) return undefined
    const { top, bottom, left, right } = element.getBoundingClientRect()
    const isInSight = bottom > 0 && top < innerHeight && right > 0 && left < innerWidth
    return isInSight ? undefined : element.outerHTML.slice(0, 120)
  })
}
