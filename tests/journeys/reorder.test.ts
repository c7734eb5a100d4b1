import { mkdtempSync, readdirSync, rmSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import type { Locator, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import type { OrderSheet } from '../../shared-schemas/order-sheets.ts'
import type { Proposal } from '../../shared-schemas/proposal.ts'
import { withCatalogueFolder } from '../builders/catalogue-folder.ts'
import { reorderShopUpTo } from '../builders/reorder-shop.ts'
import { killStragglers, runTallyplate } from '../hosts/run-program.ts'
import { checkAccessibility } from './check-accessibility.ts'
import { type Counter, openCounter } from './open-counter.ts'

// Monday's reorder by keyboard, in a real browser: from the proposal to the suppliers' files, a delivery of a part of it,
// and the next proposal.

let shop: Counter
let folder: string
beforeAll(async () => {
  folder = mkdtempSync(path.join(os.tmpdir(), 'tallyplate-reorder-'))
  shop = await openCounter(file =>
    withCatalogueFolder(reorderShopUpTo(new Date()), catalogue =>
      runTallyplate(['load', catalogue, '--file', file]),
    ),
  )
})
afterAll(async () => {
  await shop?.close()
  rmSync(folder, { recursive: true, force: true })
  killStragglers()
})

const sentence = (page: Page) => page.locator('.reorder-bench .stock-sentence')
const said = (page: Page) => page.locator('.reorder-bench .stock-form__said')
const quantityOf = (page: Page, part: string) => page.getByRole('textbox', { name: `Pieces of ${part}` })

async function says(locator: Locator, text: string | RegExp): Promise<void> {
  // biome-ignore lint/performance/useDomNodeTextContent: the words as a person sees them, apart where they stand apart
  const read = async () => (await locator.first().innerText()).replace(/\s+/g, ' ')
  await expect.poll(read, { timeout: 15_000 }).toMatch(text)
}

async function tabTo(page: Page, target: Locator): Promise<void> {
  for (let pressed = 0; pressed < 80; pressed++) {
    if (await target.evaluate(element => element === document.activeElement)) return
    await page.keyboard.press('Tab')
  }
  throw new Error('Tab does not reach it')
}

async function atReorder() {
  const { page, faults } = await shop.newPage()
  await page.getByRole('combobox', { name: 'Model no.' }).waitFor()
  await page.keyboard.press('Alt+r')
  await sentence(page).waitFor()
  return { page, faults }
}

test('the week is proposed, changed, explained, ordered and written, and what came in part is not ordered again', async () => {
  const { page, faults } = await atReorder()
  await says(sentence(page), /Proposed: 2 orders with \d+ lines/)

  // A quantity typed over changes what the order comes to.
  const belt = quantityOf(page, 'B-200')
  const proposed = Number(await belt.inputValue())
  await tabTo(page, belt)
  await page.keyboard.type('12')
  await says(page.getByRole('heading', { name: /Dale Spares/ }), /£\d+/)
  await says(page.locator('.order-line', { has: belt }), '£108.00')

  // Its arithmetic opens in words, as a drawing and as a table.
  await page.keyboard.press('Enter')
  await says(
    page.locator('.reorder-words'),
    /In the shop 0, on order 0.*It is ordered at \d+ or fewer, up to \d+/,
  )
  await limitTheShelf(page)
  await page.locator('.stock-chart svg').waitFor()
  await page.getByText('The figures as a table').click()
  await checkAccessibility(page)
  await page.emulateMedia({ colorScheme: 'dark' })
  await checkAccessibility(page)

  // A number that is none is refused before anything is made.
  await belt.fill('a few')
  await page.keyboard.press('F10')
  await says(
    page.locator('.reorder-bench [role=status].problem-note'),
    'Write a whole number of pieces of B-200',
  )
  await belt.fill(String(proposed))

  await page.keyboard.press('F10')
  await says(said(page), /\d{4}-0001 for \w+ is checked\. \d{4}-0002 for \w+ is checked\./)
  await says(sentence(page), 'Nothing is to be ordered')

  const folderField = page.getByRole('textbox', { name: 'Folder for the suppliers’ files' })
  await tabTo(page, folderField)
  await page.keyboard.type(folder)
  for (const at of [1, 2]) {
    const send = page.getByRole('button', { name: /^Send and write the files/ }).first()
    await tabTo(page, send)
    await page.keyboard.press('Enter')
    await says(said(page), /is sent\. Its files are in/)
    await expect.poll(() => readdirSync(folder).length, { timeout: 15_000 }).toBe(at)
  }
  await says(page.locator('section', { hasText: 'Order sheets' }), /Sent, awaited/)

  // One belt comes; the rest stays due, and is not ordered again.
  const number =
    readdirSync(folder)
      .find(name => name.endsWith('DALE'))
      ?.slice(0, 9) ?? ''
  await receiveOne(page, number, 'B-200')
  await page.keyboard.press('F9')
  await says(page.locator('section', { hasText: 'Order sheets' }), /Received in part/)
  await page.getByRole('button', { name: number }).first().click()
  await says(page.locator('.reorder-sheet'), /B-200 Belt 1330.* 1 came, \d+ to come/)
  await says(sentence(page), 'Nothing is to be ordered')

  // A customer takes it: what is missing to the level is proposed, and no more.
  await askPage(page, 'stock-ledger.record-movement', {
    ...{ part: 'B-200', quantity: 1, from: 'SHOP', to: 'customer', reason: 'sold', reference: 'C-7' },
  })
  await page.keyboard.press('F9')
  await says(sentence(page), 'Proposed: 1 order with 1 line')
  const { orders } = (await askPage(page, 'proposal.make-proposal', {})) as Proposal
  const [line] = orders.flatMap(({ lines }) => lines)
  expect(line?.position).toMatchObject({ onShelf: 0, onOrder: proposed - 1 })
  expect(line?.quantity).toBe((line?.level.orderUpTo ?? 0) - (proposed - 1))
  expect(Number(await quantityOf(page, 'B-200').inputValue())).toBe(line?.quantity)
  expect(faults).toEqual([])
}, 60_000)

/** A shelf that holds three is ordered up to three, whatever was typed; taken back, it is as before. */
async function limitTheShelf(page: Page): Promise<void> {
  const words = page.locator('.reorder-words')
  const upTo = /up to \d+:/.exec((await words.textContent()) ?? '')?.[0] ?? 'no level'
  expect(upTo).not.toBe('up to 3:')
  await tabTo(page, page.getByRole('textbox', { name: 'Its shelf holds' }))
  await page.keyboard.type('3')
  await page.keyboard.press('Enter')
  await says(words, 'up to 3:')
  await says(page.locator('.reorder-bench'), 'The shelf of B-200 holds 3 pieces.')
  await expect.poll(() => quantityOf(page, 'B-200').inputValue()).toBe('12')
  await page.getByRole('button', { name: 'Take it back' }).press('Enter')
  await says(words, upTo)
}

/** One piece of a sheet's line for this part comes in, on the screen for it. */
async function receiveOne(page: Page, number: string, partNumber: string): Promise<void> {
  await page.keyboard.press('Alt+g')
  const field = page.getByRole('textbox', { name: 'Order number' })
  await field.waitFor()
  await field.fill(number)
  await field.press('Enter')
  const bench = page.locator('.goods-bench')
  await says(bench.locator('section .stock-sentence'), `${number} from Dale Spares`)
  await bench
    .locator('tr', { hasText: partNumber })
    .getByRole('textbox', { name: /^Came good, line/ })
    .fill('1')
  await page.keyboard.press('F9')
  await expect
    .poll(async () => {
      const { sheet } = (await askPage(page, 'order-sheets.read-sheet', { number })) as { sheet: OrderSheet }
      return sheet.state
    })
    .toBe('part-received')
  await page.keyboard.press('Alt+r')
}

/** Asks as the page asks. */
async function askPage(page: Page, name: string, input: unknown): Promise<unknown> {
  const reply = await page.evaluate(
    async ([request, body]) => {
      const response = await fetch(`/ask/${request}`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body,
        credentials: 'same-origin',
      })
      return (await response.json()) as unknown
    },
    [name, JSON.stringify(input)] as const,
  )
  const { ok, value } = reply as { ok: boolean; value: unknown }
  expect(ok, JSON.stringify(reply)).toBe(true)
  return value
}
