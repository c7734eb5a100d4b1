import type { Locator, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { withCatalogueFolder } from '../builders/catalogue-folder.ts'
import { orderShop } from '../builders/order-shop.ts'
import { killStragglers, runTallyplate } from '../hosts/run-program.ts'
import { checkAccessibility } from './check-accessibility.ts'
import { type Counter, openCounter } from './open-counter.ts'
import { scanWith } from './scan-with.ts'
import { typeByHand } from './type-by-hand.ts'

// A van's top-up, a job from the plate to its end, and a part that comes back, with a scanner and a keyboard, in a real browser.

const vanList = 'van,family,part_number,level\nVAN1,,S-1,2\nVAN1,,P-100,1\nVAN1,,L-200,1\n'

let shop: Counter
beforeAll(async () => {
  shop = await openCounter(file =>
    withCatalogueFolder({ ...orderShop, 'van_lists.csv': vanList }, folder =>
      runTallyplate(['load', folder, '--file', file]),
    ),
  )
})
afterAll(async () => {
  await shop?.close()
  killStragglers()
})

const scanLine = (page: Page) => page.locator('.scan-line__text')
const sentence = (page: Page) => page.locator('.stock-sentence')
const partOf = (page: Page, part: string) => page.locator(`[data-part="${part}"]`)

async function says(locator: Locator, text: string | RegExp): Promise<void> {
  // biome-ignore lint/performance/useDomNodeTextContent: the words as a person sees them, apart where they stand apart
  const read = async () => (await locator.first().innerText()).replace(/\s+/g, ' ')
  await expect.poll(read, { timeout: 15_000 }).toMatch(text)
}

async function tabTo(page: Page, target: Locator): Promise<void> {
  for (let pressed = 0; pressed < 60; pressed++) {
    if (await target.evaluate(element => element === document.activeElement)) return
    await page.keyboard.press('Tab')
  }
  throw new Error('Tab does not reach it')
}

test('a van is topped up by scanning what is picked, and what does not belong in it comes back', async () => {
  const { page, faults } = await shop.newPage()
  await page.getByRole('combobox', { name: 'Model no.' }).waitFor()
  await page.keyboard.press('Alt+v')
  await tabTo(page, page.getByRole('button', { name: 'Top up Van 1' }))
  await page.keyboard.press('Enter')
  await says(sentence(page), 'Top-up of VAN1: 0 of 2 pieces confirmed.')
  await says(page.getByRole('region', { name: 'The shop has none' }), '1 of L-200 missing (level 1, has 0).')
  await scanWith(page, '..P.S-1')
  await says(scanLine(page), 'S-1 into the van: 1 of 2.')
  await scanWith(page, '..P.S-1')
  await scanWith(page, '..P.S-1')
  await says(scanLine(page), 'Of S-1 the list asks for 2, and 2 are confirmed. Put it back.')
  await scanWith(page, '..P.P-150')
  await says(scanLine(page), 'P-150 is not on this list. Put it back where it was.')
  await scanWith(page, '..P.B-2')
  await says(scanLine(page), 'B-2 back to SHOP: 1 of 1.')
  await scanWith(page, '..UNDO')
  await says(scanLine(page), 'Taken back: 1 × B-2 is not confirmed.')
  await typeByHand(page, 'B-2')
  await page.keyboard.press('Enter')
  await says(page.getByRole('form', { name: 'Confirm by hand' }), 'B-2 back to SHOP: 1 of 1.')
  await checkAccessibility(page)
  await page.keyboard.press('F9')
  await says(page.locator('.stock-done'), 'Booked: 2 movements.')
  await says(sentence(page), 'the shop has nothing to put into it.')
  expect(faults).toEqual([])
  await page.context().close()
}, 90_000)

test('a job goes from the plate to its end: one part fitted, one brought back, and the fit is confirmed', async () => {
  const { page, faults } = await shop.newPage()
  await page.getByRole('combobox', { name: 'Model no.' }).waitFor()
  await page.keyboard.press('Alt+j')
  await says(sentence(page), 'Choose a job, scan its sheet, or open a new one.')
  await page.keyboard.press('Insert')
  await says(sentence(page), 'A new job')
  await typeByHand(page, 'QV-1042/A')
  await says(page.locator('.job-form__models'), 'Quorvane QV-1042/A, dishwasher.')
  await page.keyboard.press('Tab')
  await typeByHand(page, 'water stays in')
  await page.keyboard.press('Tab')
  await page.getByRole('combobox', { name: 'Van' }).selectOption('VAN1')
  await checkAccessibility(page)
  await tabTo(page, page.getByRole('textbox', { name: 'Its number' }))
  await typeByHand(page, 'J-731')
  await page.keyboard.press('Enter')
  await says(sentence(page), 'J-731 water stays in')

  // What it needs is found by a word, with the verdict for this appliance and where it lies.
  await page.keyboard.press('F7')
  await typeByHand(page, 'pump')
  await says(page.getByRole('form', { name: 'Say what is needed' }), /Drain pump Fits/)
  await page.keyboard.press('Enter')
  await says(page.locator('.need').first(), /Drain pump still needed .*P-100 Fits 3 in A1 SHOP/)
  await tabTo(page, page.getByRole('button', { name: 'Keep one P-100 in SHOP' }))
  await page.keyboard.press('Enter')
  await says(partOf(page, 'P-100'), '1 kept')

  // Two are scanned for the job: one out of the van, one off the shelf, whose label is scanned before.
  await scanWith(page, '..P.P-100')
  await says(scanLine(page), '1 × P-100 taken from VAN1. 1 in hand.')
  await scanWith(page, '..L.SHOP')
  await says(scanLine(page), 'Parts are taken from The shop now.')
  await scanWith(page, '..P.H-1')
  await says(scanLine(page), 'SHOP has 0 of H-1 by the book, not 1.')
  await scanWith(page, '..P.P-100')
  await says(scanLine(page), '1 × P-100 taken from SHOP. 2 in hand.')
  await says(partOf(page, 'P-100'), /Fits 2 taken: 2 in hand/)
  await scanWith(page, '..P.P-100')
  await scanWith(page, '..UNDO')
  await says(scanLine(page), 'Taken back: P-100 is in SHOP again.')
  await checkAccessibility(page)

  await page.keyboard.press('F6')
  await page.keyboard.press('f')
  await says(partOf(page, 'P-100'), '2 taken, 1 fitted: 1 in hand')
  await page.keyboard.press('F6')
  await page.keyboard.press('b')
  await says(partOf(page, 'P-100'), '2 taken, 1 fitted, 1 brought back')

  await page.keyboard.press('F9')
  await tabTo(page, page.getByRole('combobox', { name: 'What was wrong' }))
  await typeByHand(page, 'coin in the pump')
  await tabTo(page, page.getByRole('textbox', { name: 'Initials' }))
  await typeByHand(page, 'AB')
  await checkAccessibility(page)
  await page.keyboard.press('Enter')
  await says(
    page.locator('.stock-done'),
    'Job J-731 is finished at the first visit. P-100 is recorded as fitted and confirmed.',
  )

  // The counter has it from then on.
  await page.keyboard.press('F3')
  await page.getByRole('combobox', { name: 'Model no.' }).focus()
  await typeByHand(page, 'QV-1042/A')
  await page.keyboard.press('F2')
  await typeByHand(page, 'P-100')
  const check = page.getByRole('region', { name: 'Part in the hand' })
  await says(check, /was fitted and confirmed in Quorvane QV-1042\/A on .*, job J-731/)

  // The number on its sheet, scanned, opens the job again.
  await page.keyboard.press('Alt+j')
  await scanWith(page, 'J-731')
  await says(scanLine(page), 'Job J-731.')
  expect(faults).toEqual([])
  await page.context().close()
}, 90_000)

test('a part that did not fit comes back, warns at the counter from then on, and goes to the supplier', async () => {
  const { page, faults } = await shop.newPage()
  await page.getByRole('combobox', { name: 'Model no.' }).waitFor()
  await page.keyboard.press('Alt+u')
  await says(sentence(page), 'Nothing in quarantine waits for a decision.')
  await scanWith(page, '..P.P-101')
  await says(scanLine(page), 'P-101. Drain pump, pattern')
  await tabTo(page, page.getByRole('combobox', { name: 'Why' }))
  await page.keyboard.press('ArrowDown')
  await tabTo(page, page.getByRole('textbox', { name: 'Which customer' }))
  await typeByHand(page, 'card 9')
  await tabTo(page, page.getByRole('textbox', { name: 'Model no. it did not fit' }))
  await typeByHand(page, 'QV-1042/A')
  await page.keyboard.press('Tab')
  await typeByHand(page, 'spigot too wide')
  await page.keyboard.press('Tab')
  await typeByHand(page, 'AB')
  await page.keyboard.press('Enter')
  await says(sentence(page), '1 return waits for a decision.')
  await says(page.locator('[data-return="P-101"]'), /1 from customer card 9, it did not fit: spigot too wide/)
  await checkAccessibility(page)

  await page.keyboard.press('F3')
  await page.getByRole('combobox', { name: 'Model no.' }).focus()
  await typeByHand(page, 'QV-1042/A')
  await page.keyboard.press('F2')
  await typeByHand(page, 'P-101')
  const check = page.getByRole('region', { name: 'Part in the hand' })
  await says(
    check,
    /Fits .*P-101 came back as a wrong fit from Quorvane QV-1042\/A on .* \(AB\): spigot too wide\./,
  )

  await page.keyboard.press('Alt+u')
  await page.keyboard.press('F6')
  await page.keyboard.press('t')
  await page.getByRole('form', { name: 'To the supplier' }).waitFor()
  await typeByHand(page, 'wrong in the list')
  await page.keyboard.press('Enter')
  await says(sentence(page), 'Nothing in quarantine waits for a decision.')
  await page.keyboard.press('F10')
  await says(scanLine(page), 'Taken back: P-101 is undecided again.')
  await says(sentence(page), '1 return waits for a decision.')
  expect(faults).toEqual([])
  await page.context().close()
}, 90_000)
