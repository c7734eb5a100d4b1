import { afterAll, beforeAll, expect, test } from 'vitest'
import type { StartUp } from '../../shared-schemas/application.ts'
import { killStragglers } from '../hosts/run-program.ts'
import { checkAccessibility } from './check-accessibility.ts'
import { type Counter, openCounter } from './open-counter.ts'
import { typeByHand } from './type-by-hand.ts'

let counter: Counter
beforeAll(async () => {
  counter = await openCounter()
})
afterAll(async () => {
  await counter?.close()
  killStragglers()
})

/** The real page, whose one question about the start-up is answered by the test. */
async function pageTold(tell: () => StartUp) {
  const { page } = await counter.newPage()
  await page.route('**/ask/application.read-start-up', route =>
    route.fulfill({ json: { ok: true, value: tell() } }),
  )
  await page.reload()
  return page
}

test('while the sample is loaded the count goes on, and the Counter follows by itself', async () => {
  let told: StartUp = { state: 'loading-sample', file: 'parts.csv', rowsDone: 1200, rowsExpected: 165_000 }
  const page = await pageTold(() => told)
  await page.getByText('1,200 of about 165,000 rows, now parts.csv').waitFor()
  await checkAccessibility(page)
  told = { ...told, file: 'fitments.csv', rowsDone: 90_000 }
  await page.getByText('90,000 of about 165,000 rows, now fitments.csv').waitFor()
  told = { state: 'ready', databaseFile: 'shop.sqlite', sampleShop: true }
  await page.getByRole('combobox', { name: 'Model no.' }).waitFor()
  await page.context().close()
})

test('a shop that will not open says what happened, what was kept, and what to do', async () => {
  const page = await pageTold(() => ({
    state: 'failed',
    problem: { code: 'database-damaged', file: 'shop.sqlite', why: 'file is not a database' },
  }))
  const alert = page.getByRole('alert')
  await alert.waitFor()
  expect(await alert.textContent()).toMatch(
    /could not be opened[\s\S]*left as it was[\s\S]*tallyplate restore/,
  )
  await checkAccessibility(page)
  await page.context().close()
})

test('a program that has gone says so, keeps what was typed, and can be asked again', async () => {
  const { page } = await counter.newPage()
  await page.getByRole('combobox', { name: 'Model no.' }).waitFor()
  await page.route('**/ask/model-lookup.find-models', route => route.abort())
  const lastAsked = page.waitForEvent(
    'requestfailed',
    request => request.postData()?.includes('ODW4512/01') === true,
  )
  await typeByHand(page, 'ODW4512/01')
  await lastAsked
  const alert = page.getByRole('alert')
  await alert.waitFor()
  expect(await alert.textContent()).toMatch(/no longer running[\s\S]*What you typed is kept/)
  await page.unroute('**/ask/model-lookup.find-models')
  await page.getByRole('button', { name: 'Ask again' }).press('Enter')
  await page.locator('.one-model').waitFor()
  expect(await page.getByRole('combobox', { name: 'Model no.' }).inputValue()).toBe('ODW4512/01')
  await page.context().close()
})
