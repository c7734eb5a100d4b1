import type { Page } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { killStragglers } from '../hosts/run-program.ts'
import { type Counter, type CounterPage, openCounter } from './open-counter.ts'
import { typeByHand } from './type-by-hand.ts'

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

const partCheck = () => page.getByRole('region', { name: 'Part in the hand' })
const form = () => page.getByRole('form', { name: 'What became of it' })
const caution = () => partCheck().getByText('came back as a wrong fit', { exact: false })
const press = async (...keys: string[]) => {
  for (const key of keys) await page.keyboard.press(key)
}

test('by keyboard alone a return is recorded, warns from then on, and is settled', async () => {
  await page.getByRole('combobox', { name: 'Model no.' }).waitFor()
  await typeByHand(page, 'ODW4512/01')
  await press('F2')
  // Whichever part the catalogue lists for it first in place of one that is too wide.
  await typeByHand(page, '000517405')
  await partCheck().getByText('Does not fit', { exact: true }).first().waitFor()
  const fitting = (await partCheck().getByRole('button').first().textContent()) ?? ''
  await press('F2')
  await typeByHand(page, fitting)
  await partCheck().getByText('Fits', { exact: true }).first().waitFor()
  expect(await caution().count()).toBe(0)

  await press('F7', 'ArrowDown', 'Tab', 'Tab')
  await typeByHand(page, 'spigot too wide')
  await press('Enter')
  await form().getByRole('alert').getByText('Sign with your initials').waitFor()
  await press('Tab')
  await typeByHand(page, 'AB')
  await press('Enter')
  await partCheck().getByText('(AB): spigot too wide.', { exact: false }).waitFor()
  expect(await partCheck().getByText('Fits', { exact: true }).first().isVisible()).toBe(true)

  await press('F7', 'ArrowDown', 'ArrowDown', 'Tab')
  await typeByHand(page, 'wrong part in the bag')
  await press('Tab')
  await typeByHand(page, 'CD')
  await press('Enter')
  await partCheck().getByText('Recorded: the return is settled.').waitFor()
  expect(await partCheck().getByText('spigot too wide', { exact: false }).count()).toBe(0)
  expect(opened.faults).toEqual([])
})
