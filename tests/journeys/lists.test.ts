import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import papaparse from 'papaparse'
import type { Locator, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { killStragglers } from '../hosts/run-program.ts'
import { checkAccessibility } from './check-accessibility.ts'
import { type Counter, openCounter } from './open-counter.ts'

// Loading lists into the sample shop, in a real browser, by keyboard alone.

let shop: Counter
let folder: string
beforeAll(async () => {
  folder = mkdtempSync(path.join(os.tmpdir(), 'tallyplate-lists-'))
  shop = await openCounter()
})
afterAll(async () => {
  await shop?.close()
  rmSync(folder, { recursive: true, force: true })
  killStragglers()
})

/** Runs a journey on a page of its own that shows the lists, and holds it to having gone without a fault. */
async function atLists(
  journey: (page: Page) => Promise<void>,
  options?: Parameters<Counter['newPage']>[0],
): Promise<void> {
  const { page, faults } = await shop.newPage(options)
  page.setDefaultTimeout(slowMachineMilliseconds)
  await page.getByRole('combobox', { name: 'Model no.' }).waitFor()
  await page.keyboard.press('Alt+L')
  await expect.poll(() => isFocused(pathField(page)), { timeout: slowMachineMilliseconds }).toBe(true)
  await journey(page)
  expect(faults).toEqual([])
  await page.context().close()
}

const slowMachineMilliseconds = 15_000

const pathField = (page: Page) => page.getByRole('combobox', { name: 'File or folder' })
const sentence = (page: Page) => page.locator('.run-report .order-card__sentence')
const loadLine = (page: Page, at: number) => page.locator('[data-load]').nth(at)
const isFocused = (locator: Locator) => locator.evaluate(element => element === document.activeElement)

/** Waits for it, or fails with what stands there instead. */
async function says(
  locator: Locator,
  text: string | RegExp,
  timeout = slowMachineMilliseconds,
): Promise<void> {
  // biome-ignore lint/performance/useDomNodeTextContent: the words as a person sees them, apart where they stand apart
  const read = async () => (await locator.first().innerText()).replace(/\s+/g, ' ')
  await expect.poll(read, { timeout }).toMatch(text)
}

async function tabTo(page: Page, locator: Locator): Promise<void> {
  await locator.waitFor()
  for (let pressed = 0; pressed < 80; pressed++) {
    if (await isFocused(locator)) return
    await page.keyboard.press('Tab')
  }
  throw new Error('Tab does not reach it')
}

/** Esc goes back to the path from anywhere and selects it, so that what is typed takes its place. */
async function typePath(page: Page, typed: string): Promise<void> {
  await page.keyboard.press('Escape')
  await page.keyboard.press('Delete')
  await page.keyboard.insertText(typed)
}

async function sign(page: Page, initials: string): Promise<void> {
  await tabTo(page, page.locator('#list-initials'))
  await page.keyboard.type(initials)
}

/** A folder of catalogue files by this name. */
function makeFolder(name: string, files: Readonly<Record<string, string>>): string {
  const made = path.join(folder, name)
  mkdirSync(made, { recursive: true })
  for (const [file, text] of Object.entries(files)) writeFileSync(path.join(made, file), text)
  return made
}

/** A row under this header; a column that is not named is empty. */
function fillRow(header: string, cells: Readonly<Record<string, string>>): string {
  return header
    .split(',')
    .map(column => cells[column] ?? '')
    .join(',')
}

const suppliersHeader = readHeader('suppliers.csv')
const modelsHeader = readHeader('models.csv')
const offersHeader = readHeader('offers.csv')

function readHeader(file: string): string {
  const [header = ''] = readFileSync(path.join('sample-catalogue', file), 'utf8').split(/\r?\n/, 1)
  return header
}

test('a list is looked at, tried, loaded, and undone', async () => {
  const brands = makeFolder('first', { 'brands.csv': 'brand\nOstrel\nVennloh\n' })
  await atLists(async page => {
    await says(page.locator('.loads'), /Loads so far 1 .* unsigned/)
    await typePath(page, `${folder}${path.sep}fi`)
    await says(page.getByRole('listbox'), 'first')
    await page.keyboard.press('ArrowDown')
    await page.keyboard.press('Enter')
    expect(await pathField(page).inputValue()).toBe(brands + path.sep)
    await says(page.locator('.path-field__told'), 'Enter takes the 1 catalogue file')
    await page.keyboard.press('Enter')
    await says(sentence(page), 'Dry run. 1 row would be added, 0 changed, 0 retired; 1 said already.')
    await says(page.getByRole('region', { name: 'Rows written' }), 'added brand Vennloh')

    await page.keyboard.press('F10')
    await says(page.getByRole('alert'), 'Sign with your initials')
    await sign(page, 'mk')
    await page.keyboard.press('F10')
    await says(sentence(page), 'Loaded. 1 row added')

    await page.keyboard.press('F2')
    await says(loadLine(page, 0), /MK .*first.* 1 added/)
    await tabTo(page, loadLine(page, 0))
    await page.keyboard.press('Enter')
    await says(page.locator('.loads__detail'), /SHA-256, first 8 brands\.csv .* [0-9a-f]{8} /)
    await tabTo(page, page.getByRole('button', { name: 'Undo this load' }))
    await page.keyboard.press('Enter')
    await page.keyboard.press('Enter')
    await says(page.getByRole('alert'), 'Say in words why it is undone')
    await page.keyboard.type('was the wrong folder')
    await page.keyboard.press('Enter')
    await says(page.getByRole('alert'), 'Sign with your initials')
    await tabTo(page, page.locator('.let-pass__initials').last())
    await page.keyboard.type('mk')
    await page.keyboard.press('Enter')
    await says(page.locator('.loads > [role=status]'), /Load 2 was undone, by load 3: 1 row as before/)
    await says(loadLine(page, 0), 'Undid load 2')
    await says(loadLine(page, 1), 'Undone by load 3')
  })
})

test('rejected rows say where and why, and are saved to be mended', async () => {
  const rejected = path.join(folder, 'left-out')
  const misspelt = fillRow(modelsHeader, {
    brand: 'Ostrell',
    model_number: 'OQA 1/01',
    appliance_type: 'washer',
  })
  const given = makeFolder('second', {
    'brands.csv': 'brand\nOstrel\nHaldewick,too many\n',
    'models.csv': `${modelsHeader}\n${misspelt}\n`,
  })
  await atLists(async page => {
    await typePath(page, given)
    await page.keyboard.press('Enter')
    await says(sentence(page), '2 rows rejected')
    const list = page.getByRole('region', { name: 'Rejected rows' })
    await says(list, /brands\.csv, line 3 .*has 2 cells/)
    await says(list, /models\.csv, line 2, brand Ostrell .*Probably Ostrel$/i)
    const target = page.getByRole('textbox', { name: 'Save the rejected rows to' })
    expect(await target.inputValue()).toBe(`${given}-rejected`)
    await tabTo(page, target)
    await page.keyboard.press('Control+A')
    await page.keyboard.insertText(rejected)
    await page.keyboard.press('F8')
    await says(page.locator('.save-rejected'), `Saved at ${rejected}.`)
    const text = readFileSync(path.join(rejected, 'brands.csv'), 'utf8')
    const { data } = papaparse.parse<Record<string, string>>(text, { header: true, skipEmptyLines: true })
    expect(data.map(row => row.brand)).toEqual(['Haldewick,too many'])

    await tabTo(page, page.getByRole('checkbox', { name: 'Only if every row is sound' }))
    await page.keyboard.press('Space')
    await sign(page, 'mk')
    await page.keyboard.press('F10')
    await says(page.getByRole('alert'), /2 rows rejected, and it is to be loaded whole or not at all/)
  })
})

test('a new edition says what it retires before it does', async () => {
  const supplier = fillRow(suppliersHeader, { supplier: 'Q9', name: 'Quillby Spares', currency: 'GBP' })
  const offers = (...parts: readonly string[]) =>
    [
      offersHeader,
      ...parts.map(part =>
        fillRow(offersHeader, {
          ...{ supplier: 'Q9', part_number: part, price: '4.00' },
          ...{ from_quantity: '1', pack: '1', minimum: '1' },
        }),
      ),
      '',
    ].join('\n')
  const suppliers = `${suppliersHeader}\n${supplier}\n`
  const both = { 'suppliers.csv': suppliers, 'offers.csv': offers('00480121', '00480122') }
  const former = makeFolder('spring', both)
  const latter = makeFolder('autumn', { ...both, 'offers.csv': offers('00480121') })
  await atLists(async page => {
    await typePath(page, former)
    await page.keyboard.press('Enter')
    await says(sentence(page), '3 rows would be added')
    await sign(page, 'mk')
    await page.keyboard.press('F10')
    await says(sentence(page), 'Loaded. 3 rows added')

    await typePath(page, latter)
    await page.keyboard.press('Enter')
    await says(sentence(page), 'Nothing would change: 2 rows said already.')
    await tabTo(page, page.getByRole('checkbox', { name: 'This is the whole new edition' }))
    await page.keyboard.press('Space')
    await says(page.locator('#edition-help'), 'no longer say is retired')
    await says(page.locator('.run-report'), 'Changed since this dry run')
    await page.keyboard.press('F10')
    await says(page.getByRole('alert'), 'See what it would do first')
    await page.keyboard.press('F9')
    await says(sentence(page), '0 rows would be added, 0 changed, 1 retired; 2 said already.')
    await page.keyboard.press('F10')
    await says(sentence(page), 'Loaded. 0 rows added, 0 changed, 1 retired')

    // The former load was built upon, and cannot be taken back alone.
    await page.keyboard.press('F2')
    await tabTo(page, loadLine(page, 1))
    await page.keyboard.press('Enter')
    await tabTo(page, page.getByRole('button', { name: 'Undo this load' }))
    await page.keyboard.press('Enter')
    await page.keyboard.type('never ordered there')
    await page.keyboard.press('Tab')
    await page.keyboard.type('mk')
    await page.keyboard.press('Enter')
    await says(page.getByRole('alert'), /Load \d+ changed the same rows after load \d+\. Undo \d+ first/)
  })
})

test('a supplier’s own list is read, matched, saved as a layout, tried and loaded', async () => {
  // In Windows-1252, so that the person has to say so: ü stands there as one byte.
  const file = path.join(folder, 'Preisliste März.csv')
  const rows = ['00480121;Bügel;12,50;2', '00480122;Dichtung;3,10;5', 'ZZ-NONE;Nichts;1,00;1']
  writeFileSync(file, `Artikelnr;Bezeichnung;Nettopreis;VPE\n${rows.join('\n')}\n`, 'latin1')
  await atLists(async page => {
    const choose = async (name: string, option: string) => {
      await tabTo(page, page.getByRole('combobox', { name, exact: true }))
      await page.keyboard.type(option)
      await says(page.getByRole('combobox', { name, exact: true }).locator('option:checked'), option)
    }
    const fill = async (column: string, value: string) => {
      await choose(`${column} needed`, 'the same')
      await tabTo(page, page.getByRole('textbox', { name: `${column} in every row` }))
      await page.keyboard.type(value)
    }
    await typePath(page, file)
    await page.keyboard.press('Enter')
    await says(page.locator('.supplier'), /Preisliste März\.csv: text in columns/)
    await says(page.locator('.supplier__doubt'), 'Choose how its letters are read')
    await says(page.locator('.found__samples'), /windows-1252: .*Bügel/)
    await page.keyboard.press('F9')
    await says(page.getByRole('alert'), 'Choose how its letters are read')
    await choose('Letters are read as', 'windows-1252')
    await expect.poll(() => page.locator('.supplier__doubt').count()).toBe(0)
    await says(page.getByRole('region', { name: 'First rows' }), '2 00480121 Bügel 12,50 2')

    // Nothing that is proposed counts before it was taken.
    await choose('Its rows are for', 'offers.csv')
    await page.keyboard.press('F9')
    await says(page.getByRole('alert'), /Match .*part_number/)
    await tabTo(page, page.getByRole('button', { name: 'Take Artikelnr for part_number' }))
    await page.keyboard.press('Enter')
    await says(page.locator('.match__column', { hasText: 'part_number' }), '00480121 · 00480122')
    await page.keyboard.press('F6')
    await says(page.locator('.match__column', { hasText: 'price' }), /comma.*12,50 · 3,10/)
    await fill('supplier', 'TARROW')
    await checkAccessibility(page)

    await page.keyboard.press('F9')
    await says(
      sentence(page),
      'Dry run. 0 rows would be added, 2 changed, 0 retired; 0 said already. 1 row rejected.',
    )
    await says(page.getByRole('region', { name: 'Rejected rows' }), /line 4, .*ZZ-NONE/)
    await page.keyboard.press('F10')
    await says(page.getByRole('alert'), 'Save the match under a name first')
    await tabTo(page, page.getByRole('textbox', { name: 'Save this match as' }))
    await page.keyboard.type('Tarrow price list')
    await page.keyboard.press('Enter')
    await says(page.locator('#layout-choice option:checked'), 'layout “Tarrow price list”')
    await sign(page, 'mk')
    await page.keyboard.press('F10')
    await says(sentence(page), 'Loaded. 0 rows added, 2 changed')

    // The next list of this kind needs no matching.
    await typePath(page, file)
    await page.keyboard.press('Enter')
    await choose('Read it by', 'layout “Tarrow price list”')
    await page.keyboard.press('F9')
    await says(sentence(page), 'Nothing would change: 2 rows said already. 1 row rejected.')
    await checkAccessibility(page)

    // On the list of loads it is renamed, and removed.
    await page.keyboard.press('F2')
    const saved = page.getByRole('region', { name: 'Saved layouts' })
    await tabTo(page, saved.getByRole('button', { name: 'Rename Tarrow price list' }))
    await page.keyboard.press('Enter')
    await page.keyboard.press('Control+A')
    await page.keyboard.type('Tarrow, spring')
    await page.keyboard.press('Enter')
    await says(saved, /“Tarrow price list” is now called “Tarrow, spring”\..*for offers\.csv, saved \d/)
    await tabTo(page, saved.getByRole('button', { name: 'Remove Tarrow, spring' }))
    await page.keyboard.press('Enter')
    await page.keyboard.press('Enter')
    await says(saved, '“Tarrow, spring” was removed. What was loaded by it stays.')
    expect(await saved.getByRole('button').count()).toBe(0)
  })
})

test('a dry run and a load are stopped half-way, and leave nothing behind', async () => {
  const rows = Array.from({ length: 250_000 }, (_, at) => `Ostrel,OQZ ${at},washer,,,,,,`)
  const models = makeFolder('many', { 'models.csv': `${modelsHeader}\n${rows.join('\n')}\n` })
  await atLists(async page => {
    const stop = async () => {
      await says(page.locator('.run-progress__pace'), /models\.csv: [\d,]+ of about [\d,]+ rows/)
      await tabTo(page, page.getByRole('button', { name: 'Stop' }))
      await page.keyboard.press('Enter')
      await says(page.getByRole('alert'), 'The load was stopped; nothing was changed.')
    }
    await typePath(page, models)
    await page.keyboard.press('Enter')
    await stop()
    await page.keyboard.press('F9')
    await says(sentence(page), 'Dry run. 250,000 rows would be added', 60_000)
    await sign(page, 'mk')
    await page.keyboard.press('F10')
    await stop()
    await page.keyboard.press('F9')
    await says(sentence(page), 'Dry run. 250,000 rows would be added', 60_000)
  })
}, 180_000)

test.each([
  ['a path that is not there', () => path.join(folder, 'attic', 'models.csv'), /no such file or folder/],
  ['a name that nothing has', () => path.join(folder, 'prices.csv'), /Nothing that can be loaded stands at/],
  ['a folder without a catalogue file', () => makeFolder('empty', {}), /holds no catalogue file such as/],
])('%s says so, and what was typed is kept', async (_title, given, words) => {
  const typed = given()
  await atLists(async page => {
    await typePath(page, typed)
    await page.keyboard.press('Enter')
    await says(page.getByRole('alert'), words)
    expect(await pathField(page).inputValue()).toBe(typed)
  })
})

test('a catalogue file that is no CSV says so, and nothing is changed', async () => {
  const given = makeFolder('odd', { 'brands.csv': 'PK\u0003\u0004\u0000\u0000\u0000' })
  await atLists(async page => {
    await typePath(page, path.join(given, 'brands.csv'))
    await page.keyboard.press('Enter')
    await says(page.getByRole('alert'), /brands\.csv.*nothing was changed/)
  })
})

describe.each(['light', 'dark'] as const)('in %s', colorScheme => {
  test('nothing keeps anybody out: loads, choosing, dry run, undoing', async () => {
    const given = makeFolder('third', { 'brands.csv': 'brand\nHaldewick\nOstrel,too many\n' })
    await atLists(
      async page => {
        await says(page.locator('.loads'), 'unsigned')
        await checkAccessibility(page)
        await typePath(page, `${folder}${path.sep}`)
        await says(page.getByRole('listbox'), 'third')
        await page.keyboard.press('ArrowDown')
        await checkAccessibility(page)
        await typePath(page, given)
        await page.keyboard.press('Enter')
        await says(sentence(page), '1 row rejected')
        await checkAccessibility(page)
        await page.keyboard.press('F2')
        await tabTo(page, loadLine(page, 0))
        await page.keyboard.press('Enter')
        await says(page.locator('.loads__detail'), 'written')
        await checkAccessibility(page)
      },
      { colorScheme },
    )
  })
})
