import type { Page } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { killStragglers } from '../hosts/run-program.ts'
import { checkAccessibility } from './check-accessibility.ts'
import { type Counter, type CounterPage, openCounter } from './open-counter.ts'

let counter: Counter
let opened: CounterPage
let page: Page

beforeAll(async () => {
  counter = await openCounter()
  opened = await counter.newPage()
  page = opened.page
})
afterAll(async () => {
  await counter?.close()
  killStragglers()
})

test('F9 opens the reasoning of the part in the hand, it prints alone, and Esc leads back to where one was', async () => {
  await page.getByRole('combobox', { name: 'Model no.' }).waitFor()
  await page.keyboard.type('ODW4520/02')
  await page.keyboard.press('F2')
  await page.keyboard.type('no such part')
  await page.getByRole('region', { name: 'Part in the hand' }).waitFor()
  await page.keyboard.press('F9')
  const sheet = page.getByRole('dialog')
  await sheet.waitFor()
  expect(await sheet.getByRole('heading').textContent()).toBe(
    'no such part: nothing on record, which is not a yes.',
  )
  expect(await sheet.textContent()).toContain('1. Appliance: ')
  expect(await sheet.textContent()).toContain('2. Number: no such part is not in the catalogue.')

  await page.emulateMedia({ media: 'print' })
  expect(await sheet.isVisible()).toBe(true)
  expect(await sheet.getByRole('button', { name: 'Print' }).isVisible()).toBe(false)
  expect(await page.getByRole('main', { includeHidden: true }).isVisible()).toBe(false)
  await page.emulateMedia({ media: 'screen' })

  await page.keyboard.press('Escape')
  await sheet.waitFor({ state: 'hidden' })
  const field = page.getByRole('textbox', { name: /^Part/ })
  await expect.poll(() => field.evaluate(element => element === document.activeElement)).toBe(true)
  expect(await field.inputValue()).toBe('no such part')
  expect(opened.faults).toEqual([])
})

test('F9 on a row of the list opens the reasoning of its part, and Esc leads back to the row', async () => {
  const { page: listed, faults } = await counter.newPage()
  await listed.getByRole('combobox', { name: 'Model no.' }).waitFor()
  await listed.keyboard.type('ODW4520/02')
  await listed.getByText('part families fit', { exact: false }).first().waitFor()
  await listed.keyboard.press('Enter')
  for (const key of ['ArrowDown', 'ArrowDown']) await listed.keyboard.press(key)
  const row = listed.locator('[data-family-line]:focus')
  await row.waitFor()
  const part = await row.getAttribute('data-why-part')
  if (part === null) throw new Error('the row has no part')
  await listed.keyboard.press('F9')
  const sheet = listed.getByRole('dialog')
  await sheet.waitFor()
  expect(await sheet.getByRole('heading').textContent()).toMatch(new RegExp(`^${part}: `))
  expect(await sheet.textContent()).toContain('1. Appliance: ')
  await listed.keyboard.press('Escape')
  await sheet.waitFor({ state: 'hidden' })
  await row.waitFor()
  expect(await row.getAttribute('data-why-part')).toBe(part)

  // Once a row is opened, each of its parts has a reasoning of its own.
  await listed.keyboard.press('Enter')
  await listed.locator('.family__detail').waitFor()
  await listed.keyboard.press('Tab')
  await listed.locator('.part-row__why button:focus').waitFor()
  await listed.keyboard.press('F9')
  await sheet.waitFor()
  await checkAccessibility(listed)
  await listed.keyboard.press('Escape')
  await sheet.waitFor({ state: 'hidden' })

  // With a part in the hand and the focus elsewhere, F9 speaks of that part.
  await listed.keyboard.press('F2')
  await listed.keyboard.type('no such part')
  await listed.getByRole('region', { name: 'Part in the hand' }).waitFor()
  await listed.keyboard.press('F9')
  expect(await sheet.getByRole('heading').textContent()).toMatch(/^no such part: /)
  expect(await sheet.count()).toBe(1)
  expect(faults).toEqual([])
})
