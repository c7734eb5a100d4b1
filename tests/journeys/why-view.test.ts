import type { Page } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { killStragglers } from '../hosts/run-program.ts'
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
