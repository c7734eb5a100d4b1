import type { Page } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { killStragglers } from '../hosts/run-program.ts'
import { checkAccessibility } from './check-accessibility.ts'
import { type Counter, openCounter } from './open-counter.ts'
import { typeByHand } from './type-by-hand.ts'

/** Each accessibility check reads a whole page, on a machine that may be busy. */
const longest = 90_000

let counter: Counter
beforeAll(async () => {
  counter = await openCounter()
})
afterAll(async () => {
  await counter?.close()
  killStragglers()
})

const press = async (page: Page, ...keys: string[]) => {
  for (const key of keys) await page.keyboard.press(key)
}
const partCheck = (page: Page) => page.getByRole('region', { name: 'Part in the hand' })
const verdict = (page: Page, word: string) => partCheck(page).getByText(word, { exact: true }).first()
const form = (page: Page) => page.getByRole('form', { name: 'What became of it' })

/** A part that the catalogue lists for the model in place of one that is too wide. */
async function findFitting(page: Page): Promise<string> {
  await ask(page, '000517405')
  await verdict(page, 'Does not fit').waitFor()
  return (await partCheck(page).getByRole('button').first().textContent()) ?? ''
}

async function ask(page: Page, part: string): Promise<void> {
  await page.getByRole('combobox', { name: 'Model no.' }).waitFor()
  await press(page, 'Escape')
  await typeByHand(page, 'ODW4512/01')
  await press(page, 'F2')
  await typeByHand(page, part)
}

test(
  'by keyboard alone a part is forbidden, its history is read, and the correction is withdrawn once',
  async () => {
    const { page, faults } = await counter.newPage()
    const part = await findFitting(page)
    await ask(page, part)
    await verdict(page, 'Fits').waitFor()

    await press(page, 'F7', 'ArrowDown', 'ArrowDown', 'Tab', 'Enter')
    await form(page).getByRole('alert').getByText('Say why it must not go into this model').waitFor()
    await typeByHand(page, 'spigot fouls the sump')
    await press(page, 'Tab')
    await typeByHand(page, 'AB')
    await checkAccessibility(page)
    await press(page, 'Enter')
    await verdict(page, 'Does not fit').waitFor()
    await partCheck(page).getByText('Refused by a correction of this shop (shop correction, AB').waitFor()
    await checkAccessibility(page)

    const other = await counter.newPage()
    await ask(other.page, part)
    await verdict(other.page, 'Does not fit').waitFor()
    for (const each of [page, other.page]) {
      await press(each, 'F7', 'Tab')
      await typeByHand(each, 'the new sump has room')
      await press(each, 'Tab')
      await typeByHand(each, 'CD')
    }
    await press(page, 'Enter')
    await verdict(page, 'Fits').waitFor()
    await partCheck(page).getByText('Recorded: the correction is withdrawn.').waitFor()
    expect(await partCheck(page).getByText('Refused by a correction').count()).toBe(0)

    await press(other.page, 'Enter')
    await form(other.page).getByRole('alert').getByText('it was withdrawn already').waitFor()
    await verdict(other.page, 'Fits').waitFor()

    await press(page, 'F6')
    const rows = page.getByRole('dialog').getByRole('row')
    await page.getByRole('dialog').getByText('No longer said', { exact: false }).waitFor()
    const said = (await rows.allTextContents()).filter(row => row.includes('must not be used here'))
    expect(said).toHaveLength(2)
    expect(said[0]).toContain('spigot fouls the sump')
    expect(said[1]).toContain('withdrawn by CD: the new sump has room.')
    expect([...faults, ...other.faults]).toEqual([])
  },
  longest,
)

test(
  'F6 reads the verdict of a typed day beside the plate, and prints alone',
  async () => {
    const { page, faults } = await counter.newPage()
    const part = await findFitting(page)
    await ask(page, part)
    await verdict(page, 'Fits').waitFor()
    await press(page, 'F6')
    const sheet = page.getByRole('dialog')
    await sheet.getByRole('table').waitFor()
    // Neither F9 nor F7 reaches what lies behind.
    await press(page, 'F9', 'F7')
    expect(await page.getByRole('dialog').count()).toBe(1)
    expect(await form(page).count()).toBe(0)
    const plate = await page.locator('.counter__plate').boundingBox()
    const beside = await sheet.boundingBox()
    expect(beside?.x).toBeGreaterThanOrEqual((plate?.x ?? 0) + (plate?.width ?? 0))

    const type = async (day: string) => {
      await press(page, 'Control+a')
      // No person types as fast as a scanner does, and Enter after a burst of keys ends a scan.
      await typeByHand(page, day)
      await press(page, 'Enter')
    }
    const alert = sheet.getByRole('alert')
    for (const none of ['', '2026', '31.02.2026', 'yesterday']) {
      await press(page, 'Control+a', 'Delete')
      await type(none)
      await alert.getByText('Type a whole day').waitFor()
    }
    await type('2099-01-01')
    await alert.getByText('has not come yet').waitFor()
    await type('1999-12-31')
    await sheet.getByText('At the end of 1999-12-31', { exact: false }).waitFor()
    expect(await alert.count()).toBe(0)
    expect(await sheet.getByRole('status').textContent()).toContain('No record')
    const today = new Date().toISOString().slice(0, 10)
    await type(today)
    await sheet.getByText(`At the end of ${today}`, { exact: false }).waitFor()
    expect(await sheet.getByRole('status').textContent()).toContain('Fits')
    await checkAccessibility(page)
    await page.emulateMedia({ colorScheme: 'dark' })
    await checkAccessibility(page)

    await page.emulateMedia({ media: 'print' })
    expect(await sheet.getByRole('status').isVisible()).toBe(true)
    expect(await sheet.getByRole('textbox').isVisible()).toBe(false)
    expect(await page.getByRole('main', { includeHidden: true }).isVisible()).toBe(false)
    await page.emulateMedia({ media: 'screen' })
    await press(page, 'Escape')
    await sheet.waitFor({ state: 'hidden' })
    const field = page.getByRole('textbox', { name: /^Part/ })
    await expect.poll(() => field.evaluate(element => element === document.activeElement)).toBe(true)
    expect(faults).toEqual([])
  },
  longest,
)
