import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import papaparse from 'papaparse'
import type { Locator, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { killStragglers } from '../hosts/run-program.ts'
import { checkAccessibility } from './check-accessibility.ts'
import { type Counter, openCounter } from './open-counter.ts'
import { scanWith } from './scan-with.ts'
import { typeByHand } from './type-by-hand.ts'

// The order check on the sample shop, in a real browser, by keyboard alone.

let shop: Counter
let folder: string
beforeAll(async () => {
  folder = mkdtempSync(path.join(os.tmpdir(), 'tallyplate-orders-'))
  shop = await openCounter()
})
afterAll(async () => {
  await shop?.close()
  rmSync(folder, { recursive: true, force: true })
  killStragglers()
})

/** Runs a journey on a page of its own that shows the order check, and holds it to having gone without a fault. */
async function atOrderCheck(
  journey: (page: Page) => Promise<void>,
  options?: Parameters<Counter['newPage']>[0],
): Promise<void> {
  const { page, faults } = await shop.newPage(options)
  await page.getByRole('combobox', { name: 'Model no.' }).waitFor()
  await page.keyboard.press('F4')
  // Once the field has the focus, the screen's keys act.
  await expect.poll(() => isFocused(orderField(page))).toBe(true)
  await journey(page)
  expect(faults).toEqual([])
  await page.context().close()
}

const orderField = (page: Page) => page.getByRole('textbox', { name: 'Order lines' })
const sentence = (page: Page) => page.locator('.order-card__sentence')
const row = (page: Page, line: number) => page.locator(`[data-order-line="${line}"]`)
const findings = (page: Page, severity: string) => page.locator(`.findings--${severity}`)

/** Waits for it, or fails with what stands there instead. */
async function says(locator: Locator, text: string | RegExp): Promise<void> {
  // biome-ignore lint/performance/useDomNodeTextContent: the words as a person sees them, apart where they stand apart
  const read = async () => (await locator.first().innerText()).replace(/\s+/g, ' ')
  await expect.poll(read, { timeout: 5000 }).toMatch(text)
}

const isFocused = (locator: Locator) => locator.evaluate(element => element === document.activeElement)

async function tabTo(page: Page, locator: Locator): Promise<void> {
  for (let pressed = 0; pressed < 60; pressed++) {
    if (await isFocused(locator)) return
    await page.keyboard.press('Tab')
  }
  throw new Error('Tab does not reach it')
}

/** As a person does: the rows stand on the clipboard, and are pasted into the field. */
async function paste(page: Page, text: string): Promise<void> {
  await page.evaluate(words => navigator.clipboard.writeText(words), text)
  await page.keyboard.press('Escape')
  await page.keyboard.press('Control+V')
}

const header = 'part_number\tquantity\tbrand\tmodel_number\n'
// What each of these gets at the counter stands in sample-catalogue/awkward-cases.ts and its files.
const wrongElbow = '00480122\t1\tOstrel\tODW4512/01\n'
const fitting = '00480121\t1\tOstrel\tODW4512/01\n'
const order = `${header}${fitting}${wrongElbow}48O121-X\t1\t\t\n00480145\t\t\t\n`

test('from a pasted order to what stops it, line by line', async () => {
  await atOrderCheck(async page => {
    await says(sentence(page), 'Paste the order to check it')
    await paste(page, order)
    await says(sentence(page), /4 lines: 2 stops, .* Mend the stops/)
    await says(row(page, 2), /2 1 × 00480121 .* Fits Ostrel ODW4512\/01/)
    await says(row(page, 3), /No record .* 1 stop/)

    await page.keyboard.press('F2')
    await says(findings(page, 'stop'), 'Nothing on record says that it fits Ostrel ODW4512/01')
    expect(await isFocused(row(page, 3))).toBe(true)
    await page.keyboard.press('F2')
    await says(findings(page, 'stop'), 'The catalogue has no part 48O121-X')
    await page.keyboard.press('ArrowDown')
    expect(await isFocused(row(page, 5))).toBe(true)
    await page.keyboard.press('Enter')
    await says(findings(page, 'caution'), '00480145 is replaced by 00480146. Order 00480146.')
    await says(findings(page, 'note'), 'No quantity stands on this line; 1 is taken.')
    await page.keyboard.press('Enter')
    expect(await findings(page, 'caution').count()).toBe(0)
  })
})

test('a stop is let pass only with a reason and initials, which the next check shows', async () => {
  await atOrderCheck(async page => {
    await paste(page, 'part_number\tquantity\nQX-77 01\t1\n')
    await says(sentence(page), '1 line: 1 stop')
    await page.keyboard.press('F2')
    await tabTo(page, page.getByRole('button', { name: 'Let this pass' }))
    await page.keyboard.press('Enter')
    await page.keyboard.press('Enter')
    await says(page.getByRole('alert'), 'Say in words why this may pass')
    // No person types as fast as a scanner does, and Enter after a burst of keys ends a scan.
    await typeByHand(page, 'Tarrow has it under this number')
    await page.keyboard.press('Enter')
    await says(page.getByRole('alert'), 'Sign with your initials')
    await tabTo(page, page.getByRole('textbox', { name: 'Initials' }))
    await page.keyboard.type('mk')
    await page.keyboard.press('Enter')
    await says(sentence(page), '1 line: 0 stops, 0 cautions. Nothing stops this order.')
    await says(findings(page, 'note'), /Let pass by MK on \d{4}-\d\d-\d\d: Tarrow has it under this number\./)
  })
  await atOrderCheck(async page => {
    await paste(page, 'qx7701\t5\n')
    await says(sentence(page), '1 line: 0 stops')
  })
})

test('a file is opened, mended in place and checked again', async () => {
  const file = path.join(folder, 'monday.csv')
  writeFileSync(file, 'part_number,quantity\n00480121,two\n')
  await atOrderCheck(async page => {
    const picker = page.getByLabel('CSV file of the order')
    // The system's own dialog is kept shut: that F6 asks for it is heard, and the file is then handed in as it would.
    await picker.evaluate(input =>
      input.addEventListener('click', event => {
        event.preventDefault()
        input.dataset.asked = 'yes'
      }),
    )
    await page.keyboard.press('F6')
    await expect.poll(() => picker.getAttribute('data-asked')).toBe('yes')
    await picker.setInputFiles(file)
    await says(sentence(page), '1 line: 1 stop')
    await page.keyboard.press('Escape')
    await page.keyboard.type('part_number,quantity\n00480121,2\n', { delay: 45 })
    await says(page.getByRole('status').first(), 'Changed since it was checked')
    await page.keyboard.press('F9')
    await says(sentence(page), '1 line: 0 stops')

    await tabTo(page, page.getByRole('combobox', { name: 'Supplier' }))
    await page.keyboard.type('Brack')
    await says(row(page, 2), /2 ×/)
    expect(await page.getByRole('combobox', { name: 'Supplier' }).inputValue()).toBe('BRACKWATER')
  })
})

test.each([
  ['a heading that is not known', 'part_number\tMenge\n00480121\t1\n', /unknown column Menge/],
  ['a quotation mark that is not closed', '"00480121\t1\n', /quotation mark/],
])('%s says what to mend, and the order is kept', async (_title, text, words) => {
  await atOrderCheck(async page => {
    await paste(page, text)
    await says(page.getByRole('alert'), words)
    await says(page.getByRole('alert'), 'The order in the field is kept.')
    expect(await orderField(page).inputValue()).toBe(text)
  })
})

test('the checked order is copied and saved as the same CSV', async () => {
  await atOrderCheck(async page => {
    await paste(page, order)
    await says(sentence(page), '4 lines')
    await page.keyboard.press('F8')
    await says(page.locator('.order-card__outcome'), 'Copied. It is on the clipboard.')
    const copied = await page.evaluate(() => navigator.clipboard.readText())
    const { data } = papaparse.parse<Record<string, string>>(copied, { header: true, skipEmptyLines: true })
    expect(data.map(line => [line.line, line.part_number, line.quantity, line.verdict])).toEqual([
      ['2', '00480121', '1', 'fits'],
      ['3', '00480122', '1', 'no-record'],
      ['4', '48O121-X', '1', ''],
      ['5', '00480145', '1', ''],
    ])
    const download = page.waitForEvent('download')
    await page.keyboard.press('F10')
    const saved = path.join(folder, 'saved.csv')
    await (await download).saveAs(saved)
    expect((await download).suggestedFilename()).toBe('checked-order.csv')
    expect(readFileSync(saved, 'utf8').replaceAll('\r\n', '\n')).toBe(copied.replaceAll('\r\n', '\n'))
  })
})

test('what was typed on a screen stands there after the other one was shown', async () => {
  await atOrderCheck(async page => {
    await paste(page, order)
    await says(sentence(page), '4 lines')
    await page.keyboard.press('F3')
    const plate = page.getByRole('combobox', { name: 'Model no.' })
    expect(await isFocused(plate)).toBe(true)
    await page.keyboard.type('ODW4512')
    await page.keyboard.press('F4')
    expect(await orderField(page).inputValue()).toBe(order)
    await says(sentence(page), '4 lines')
    await page.keyboard.press('F3')
    expect(await plate.inputValue()).toBe('ODW4512')
  })
})

describe.each(['light', 'dark'] as const)('in %s', colorScheme => {
  test('nothing keeps anybody out: empty, checked, unfolded, letting pass', async () => {
    await atOrderCheck(
      async page => {
        await checkAccessibility(page)
        await paste(page, order)
        await says(sentence(page), '4 lines')
        await page.keyboard.press('F2')
        await tabTo(page, page.getByRole('button', { name: 'Let this pass' }))
        await page.keyboard.press('Enter')
        await checkAccessibility(page)
      },
      { colorScheme },
    )
  })
})

test('a part that is scanned is a line of the order, and the undo label takes it out again', async () => {
  await atOrderCheck(async page => {
    const order = page.getByRole('textbox', { name: 'Order lines' })
    await scanWith(page, '..P.00480121')
    await page.getByText('00480121 is on the order.', { exact: false }).waitFor()
    await scanWith(page, '..P.00480121')
    await expect.poll(() => order.inputValue()).toBe('part_number,quantity\n00480121,2\n')
    await scanWith(page, '..UNDO')
    await expect.poll(() => order.inputValue()).toBe('part_number,quantity\n00480121,1\n')
    await scanWith(page, 'BAG/77-A')
    await page.getByRole('form', { name: 'Attach the code' }).waitFor()
    await page.keyboard.press('F9')
    await says(sentence(page), '1 line: 0 stops')
  })
})
