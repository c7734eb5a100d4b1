import type { Locator, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { openApplication } from '../../electron/application.ts'
import { surroundingsOf } from '../../electron/hosts/surroundings.ts'
import { withCatalogueFolder } from '../builders/catalogue-folder.ts'
import { sheetShop } from '../electron/order-sheets/sheet-shop.ts'
import { killStragglers } from '../hosts/run-program.ts'
import { checkAccessibility } from './check-accessibility.ts'
import { type Counter, openCounter } from './open-counter.ts'
import { scanWith } from './scan-with.ts'
import { typeByHand } from './type-by-hand.ts'

// A delivery is received against an order sheet with a scanner and the keyboard, in a real browser, without a mouse.

let shop: Counter
let number = ''
beforeAll(async () => {
  shop = await openCounter(async file => {
    const application = openApplication(
      surroundingsOf({ databaseFile: file, sampleFolder: null, device: 'test-counter' }),
    )
    const ask = async (name: string, input: unknown) => {
      const reply = await application.ask(name, input)
      if (!reply.ok) throw new Error(`${name}: ${JSON.stringify(reply.problem)}`)
      return reply.value
    }
    await withCatalogueFolder(sheetShop, folder =>
      ask('catalogue.load-files', { path: folder, strict: true }),
    )
    const lines = [
      { part: 'P-100', quantity: 4 },
      { part: 'S-2', quantity: 3 },
      { part: 'S-1', quantity: 1, unitPrice: '2' },
    ]
    const { sheets } = (await ask('order-sheets.draft-sheets', {
      sheets: [{ supplier: 'DALE', lines }],
    })) as {
      sheets: { number: string }[]
    }
    number = sheets[0]?.number ?? ''
    // The old belt is superseded and no longer offered by this supplier: somebody wants it all the same.
    await ask('order-check.override-stop', {
      line: { line: 3, partNumber: 'S-1', quantity: 1 },
      ...{ supplier: 'DALE', code: 'not-offered-by-supplier', reason: 'they found one', initials: 'ab' },
    })
    await ask('order-sheets.check-sheet', { number })
    await ask('order-sheets.send-sheet', { number, initials: 'ab' })
    application.close()
  })
})
afterAll(async () => {
  await shop?.close()
  killStragglers()
})

const scanLine = (page: Page) => page.locator('.scan-line__text')
const sentence = (page: Page) => page.locator('.goods-bench .stock-sentence')

async function says(locator: Locator, text: string | RegExp): Promise<void> {
  // biome-ignore lint/performance/useDomNodeTextContent: the words as a person sees them, apart where they stand apart
  const read = async () => (await locator.first().innerText()).replace(/\s+/g, ' ')
  await expect.poll(read, { timeout: 15_000 }).toMatch(text)
}

test('short, damaged and substituted pieces are received by scanner, and the rest stays due until it is closed', async () => {
  const { page, faults } = await shop.newPage()
  await page.getByRole('combobox', { name: 'Model no.' }).waitFor()
  await page.keyboard.press('Alt+g')
  await says(sentence(page), 'Scan the order number')

  // The code on the printed order opens it, with the word of the symbol that some scanners send.
  await scanWith(page, `]C0${number}`)
  await says(sentence(page), `${number} from Dale Spares: 8 of 8 pieces to come.`)
  for (let piece = 1; piece <= 3; piece++) {
    await scanWith(page, 'P-100')
    await says(scanLine(page), `Line 1, P-100: ${piece}.`)
  }
  await scanWith(page, 'P-100')
  await says(scanLine(page), 'Line 1, P-100: 4.')
  await scanWith(page, '..UNDO')
  await says(scanLine(page), 'Taken back.')
  await page.keyboard.press('F7')
  await says(page.locator('.asked-sentence'), 'What is scanned now is damaged')
  await scanWith(page, 'P-100')
  await says(scanLine(page), 'Line 1, P-100: 1 damaged.')
  await page.keyboard.press('F7')

  // By hand: two of three, at another price than the list's.
  await page.getByRole('textbox', { name: 'Came good, line 2' }).focus()
  await typeByHand(page, '2')
  await page.getByRole('textbox', { name: 'Paid each, line 2' }).focus()
  await typeByHand(page, '2,40')

  // The newer belt comes for the older one that was ordered.
  await page.keyboard.press('Escape')
  await scanWith(page, '..P.H-1')
  await says(scanLine(page), `H-1 is on no line of ${number}.`)
  const form = page.getByRole('form', { name: /was not ordered/ })
  await form.getByRole('combobox', { name: 'In place of' }).selectOption('3')
  await says(form, /Not proved. It is another kind of part than S-1/)
  await checkAccessibility(page)
  await form.getByRole('button', { name: 'Leave it out' }).press('Enter')

  await page.getByRole('textbox', { name: 'Delivery note' }).focus()
  await typeByHand(page, '4711')
  await page.getByRole('textbox', { name: 'Initials' }).focus()
  await typeByHand(page, 'cd')
  await page.keyboard.press('F9')
  await says(page.locator('.goods-bench .stock-form__said'), `Booked. 3 pieces of ${number} still to come.`)
  await says(
    page.locator('.goods-deliveries'),
    /CD, note 4711: line 1, 3 × P-100 into SHOP; line 1, 1 × P-100 damaged into BAD; line 2, 2 × S-2 into SHOP/,
  )
  await checkAccessibility(page)

  // Next day the missing belt comes as its successor, and one piece never will.
  await scanWith(page, '..P.B-1')
  const other = page.getByRole('form', { name: /was not ordered/ })
  await other.getByRole('combobox', { name: 'In place of' }).selectOption('3')
  await says(other, /Not proved. It is of the same family/)
  await other.getByRole('textbox', { name: 'Why is it taken all the same?' }).focus()
  await typeByHand(page, 'same belt')
  await page.keyboard.press('Enter')
  await page.keyboard.press('F9')
  await says(page.locator('.goods-bench .stock-form__said'), `Booked. 2 pieces of ${number} still to come.`)
  const close = page.getByRole('button', { name: 'Will not come… line 2' })
  await close.press('Enter')
  await typeByHand(page, 'discontinued')
  await page.keyboard.press('Enter')
  await says(page.locator('.goods-table'), /1 closed/)

  // The shelves know what is on its way and what came.
  await page.keyboard.press('Alt+s')
  await page.getByRole('textbox', { name: 'Part or location' }).focus()
  await typeByHand(page, 'P-100')
  await page.keyboard.press('Enter')
  await says(page.locator('.shelf:visible'), `On order: 1 on ${number} from DALE`)
  await says(page.getByRole('table', { name: 'Where it lies' }), /SHOP 6 0 6/)
  expect(faults).toEqual([])
  await page.context().close()
}, 120_000)
