import type { Locator, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { withCatalogueFolder } from '../builders/catalogue-folder.ts'
import { countedVanCatalogue, type VanPart, vanParts } from '../builders/counted-van.ts'
import { killStragglers, runTallyplate } from '../hosts/run-program.ts'
import { checkAccessibility } from './check-accessibility.ts'
import { type Counter, openCounter } from './open-counter.ts'
import { scanWith } from './scan-with.ts'
import { typeByHand } from './type-by-hand.ts'

// A van of sixty lines is counted with a scanner, in a real browser, without a mouse.

let shop: Counter
beforeAll(async () => {
  const yesterday = new Date(Date.now() - 86_400_000).toISOString().slice(0, 10)
  shop = await openCounter(file =>
    withCatalogueFolder(countedVanCatalogue(yesterday), folder =>
      runTallyplate(['load', folder, '--file', file]),
    ),
  )
})
afterAll(async () => {
  await shop?.close()
  killStragglers()
})

async function at(
  key: string,
  journey: (page: Page) => Promise<void>,
  options?: Parameters<Counter['newPage']>[0],
): Promise<void> {
  const { page, faults } = await shop.newPage(options)
  await page.getByRole('combobox', { name: 'Model no.' }).waitFor()
  await page.keyboard.press(key)
  await journey(page)
  expect(faults).toEqual([])
  await page.context().close()
}

const scanLine = (page: Page) => page.locator('.scan-line__text')
const sentence = (page: Page) => page.locator('.stock-sentence')
const variance = (page: Page, part: string) => page.locator(`[data-variance="${part}"]`)
const isFocused = (locator: Locator) => locator.evaluate(element => element === document.activeElement)

async function says(locator: Locator, text: string | RegExp): Promise<void> {
  // biome-ignore lint/performance/useDomNodeTextContent: the words as a person sees them, apart where they stand apart
  const read = async () => (await locator.first().innerText()).replace(/\s+/g, ' ')
  await expect.poll(read, { timeout: 15_000 }).toMatch(text)
}

async function focusVariance(page: Page, part: string): Promise<void> {
  for (let pressed = 0; pressed < 60; pressed++) {
    if (await variance(page, part).evaluate(line => line.contains(document.activeElement))) return
    await page.keyboard.press('Tab')
  }
  throw new Error('Tab does not reach it')
}

async function bookOf(page: Page): Promise<Record<string, number>> {
  const rows = await page.evaluate(async () => {
    const response = await fetch('/ask/stock-ledger.list-on-hand', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ location: 'van-1' }),
    })
    const { value } = (await response.json()) as {
      value: { rows: { partNumber: string; quantity: number }[] }
    }
    return value.rows.map(({ partNumber, quantity }) => [partNumber, quantity] as const)
  })
  return Object.fromEntries(rows)
}

/** What lies in the van: a pattern valve was booked where the genuine went, a belt went unbooked, and one part is lost. */
const [genuine, pattern, belt, lost] = vanParts as readonly [VanPart, VanPart, VanPart, VanPart]
const lies = ({ partNumber, booked }: VanPart) =>
  booked +
  ({ [genuine.partNumber]: -1, [pattern.partNumber]: 1, [belt.partNumber]: -1, [lost.partNumber]: -1 }[
    partNumber
  ] ?? 0)

/** Every way in which a part can be scanned, by turns. */
function codeOf({ partNumber, gtin }: VanPart, turn: number): string {
  return [gtin, `]E0${gtin}`, partNumber, `]C1010${gtin}10LOT${turn}\u001d21S${turn}`, `..P.${partNumber}`][
    turn % 5
  ] as string
}

test('sixty lines are scanned, a swap, a job line and a loss are told apart, and the book is as counted', async () => {
  await at('Alt+v', async page => {
    await says(sentence(page), 'Which van or shelf is counted?')
    await scanWith(page, '..L.van-1')
    await says(sentence(page), 'Count of van-1: 0 of 60 lines counted.')
    await says(scanLine(page), 'The count of van-1 begins.')

    // What is half typed stays as it is while codes are scanned over it.
    const field = page.getByRole('textbox', { name: 'Part number, or scan' })
    await expect.poll(() => isFocused(field)).toBe(true)
    await typeByHand(page, 'VP')
    let turn = 0
    for (const part of vanParts)
      for (let piece = 0; piece < lies(part); piece++) await scanWith(page, codeOf(part, turn++))
    await says(sentence(page), 'Count of van-1: 60 of 60 lines counted.')
    const last = vanParts[59] as VanPart
    await says(scanLine(page), `${last.partNumber}: ${lies(last)} counted.`)
    expect(await field.inputValue()).toBe('VP')
    // Blind: the book stands nowhere on the sheet.
    expect(await page.locator('.count-table').textContent()).not.toMatch(/book/i)

    // One scan too many is taken back by the label, one by the key.
    await scanWith(page, last.gtin)
    await says(scanLine(page), `${last.partNumber}: ${lies(last) + 1} counted.`)
    await scanWith(page, '..UNDO')
    await says(scanLine(page), `Taken back. ${last.partNumber}: ${lies(last)} counted.`)
    await scanWith(page, last.gtin)
    await says(scanLine(page), `${last.partNumber}: ${lies(last) + 1} counted.`)
    await page.keyboard.press('F2')
    await says(scanLine(page), `Taken back. ${last.partNumber}: ${lies(last)} counted.`)
    await checkAccessibility(page)

    await page.keyboard.press('F9')
    await says(sentence(page), 'van-1. 56 of 60 lines are right within tolerance: 93.3 %. 4 are off.')
    await says(variance(page, genuine.partNumber), /booked 2, counted 1: 1 short/)
    await checkAccessibility(page)

    // A line that is off is counted once more: the first scan begins anew.
    await says(variance(page, lost.partNumber), 'Count it once more.')
    await focusVariance(page, lost.partNumber)
    await page.keyboard.press('c')
    await says(page.locator('.asked-sentence'), `Count ${lost.partNumber} again`)
    await scanWith(page, lost.gtin)
    await says(scanLine(page), `${lost.partNumber}: 1 counted.`)
    await page.keyboard.press('F9')
    await says(variance(page, lost.partNumber), /booked 2, counted 1: 1 short (?!Count it)/)

    // Posting without reasons is not done at once.
    await page.keyboard.press('F10')
    await says(page.getByRole('alert'), '4 lines have no reason yet')

    await focusVariance(page, genuine.partNumber)
    await says(variance(page, genuine.partNumber), `1 used where ${pattern.partNumber} was booked`)
    await page.keyboard.press('1')
    await says(variance(page, genuine.partNumber), `Put down as swapped with ${pattern.partNumber}.`)
    await says(variance(page, pattern.partNumber), `Put down as swapped with ${genuine.partNumber}.`)

    await page.keyboard.press('F6')
    await says(variance(page, belt.partNumber), /1 fitted on job J731 of .* and not booked/)
    await page.keyboard.press('1')
    await says(variance(page, belt.partNumber), 'Put down as fitted on job J731.')

    await page.keyboard.press('F6')
    await expect
      .poll(() => variance(page, lost.partNumber).evaluate(line => line.contains(document.activeElement)))
      .toBe(true)
    await page.keyboard.press('o')
    await page.getByRole('textbox', { name: 'Lost: how, if you know' }).waitFor()
    await typeByHand(page, 'fell in the drain')
    await page.keyboard.press('Enter')
    await says(variance(page, lost.partNumber), 'Put down as lost: fell in the drain.')

    await page.keyboard.press('F10')
    await says(page.locator('.stock-done'), /Posted\. 4 movements made; .* The book is as counted\./)
    expect(await bookOf(page)).toEqual(
      Object.fromEntries(vanParts.map(part => [part.partNumber, lies(part)])),
    )
    await checkAccessibility(page)

    await page.getByRole('button', { name: 'Another count' }).press('Enter')
    await says(page.locator('.stock-table'), /van-1 60 93\.3 % .* 2 swapped, 1 job not booked, 1 lost/)
    await checkAccessibility(page)
  })
}, 180_000)

test('a code that nobody knows is attached to a part and counts at once', async () => {
  await at('Alt+v', async page => {
    await scanWith(page, '..L.van-1')
    await says(scanLine(page), 'The count of van-1 begins.')
    await scanWith(page, 'BAG/77-A')
    await says(scanLine(page), 'Nothing here has the code BAG/77-A.')
    const form = page.getByRole('form', { name: 'Attach the code' })
    await form.getByRole('textbox', { name: 'Part number' }).focus()
    await typeByHand(page, 'vp 010')
    await page.keyboard.press('Enter')
    await says(scanLine(page), 'VP-010: 1 counted.')
    await scanWith(page, 'BAG/77-A')
    await says(scanLine(page), 'VP-010: 2 counted.')
    await scanWith(page, ']E02000010000006')
    await says(scanLine(page), 'was not read right: its check digit is wrong. Scan it again.')

    // By hand: a number that is not known keeps what was typed.
    await page.keyboard.press('Escape')
    await typeByHand(page, 'VP-999')
    await page.keyboard.press('Tab')
    await typeByHand(page, '4')
    await page.keyboard.press('Enter')
    await says(page.getByRole('alert'), 'No part has the number “VP-999”.')
    expect(await page.getByRole('textbox', { name: 'Part number, or scan' }).inputValue()).toBe('VP-999')
  })
})

test('a part is moved, taken back and found in its ledger, by keyboard', async () => {
  await at('Alt+s', async page => {
    await says(sentence(page), 'Type a part number or a location')
    await expect.poll(() => isFocused(page.getByRole('textbox', { name: 'Part or location' }))).toBe(true)
    await typeByHand(page, 'VP-001')
    await page.keyboard.press('Enter')
    await says(sentence(page), 'VP-001 Valve 1')
    await page.getByRole('button', { name: 'Its label' }).press('Enter')
    await page.getByRole('img', { name: 'Code ..P.VP-001' }).waitFor()
    await checkAccessibility(page)
    await page.keyboard.press('Escape')
    await expect.poll(() => page.getByRole('dialog').count()).toBe(0)
    await page.keyboard.press('F2')
    // As fast as keys can be struck, and the next field at once: nothing of it is lost.
    await page.keyboard.type('20')
    await page.getByRole('combobox', { name: 'To' }).focus()
    await typeByHand(page, 'van-1')
    await page.getByRole('textbox', { name: 'Why' }).focus()
    await typeByHand(page, 'for Friday')
    await page.keyboard.press('Enter')
    await says(page.getByRole('alert'), 'shop has 9 of VP-001 by the book, not 20.')
    await page.keyboard.press('F2')
    await typeByHand(page, '3')
    await page.keyboard.press('Enter')
    await says(page.locator('.move-form'), 'Moved: 3 × VP-001 from shop to van-1.')
    await says(page.getByRole('table', { name: 'Where it lies' }), /shop 6 0 6 van-1 4 0 4/)
    await checkAccessibility(page)
    await page.keyboard.press('F10')
    await says(scanLine(page), 'Taken back: 3 × VP-001 from van-1 to shop.')
    await says(page.getByRole('table', { name: 'Where it lies' }), /shop 9 0 9 van-1 1 0 1/)
    await scanWith(page, '..L.van-1')
    await says(sentence(page), 'Van 1, Otter van-1')
    await checkAccessibility(page)
  })
}, 90_000)
