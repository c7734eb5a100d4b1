import { readFileSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { killStragglers, runTallyplate } from './run-program.ts'
import { makeSmallShop, type SmallShop } from './small-shop.ts'

let shop: SmallShop
beforeAll(async () => {
  shop = await makeSmallShop()
})
afterAll(() => {
  killStragglers()
  shop.remove()
})

const run = (...given: readonly string[]) => runTallyplate(given, { TALLYPLATE_FILE: shop.databaseFile })

function write(name: string, content: string | Uint8Array): string {
  const file = path.join(shop.folder, name)
  writeFileSync(file, content)
  return file
}

const layout = {
  name: 'Harrow brands',
  feeds: 'brands.csv',
  reading: { encoding: 'windows-1252', separator: ';', sheet: null, headerRow: 1 },
  headings: ['Marke', 'Land'],
  columns: [{ column: 'brand', heading: 'Marke' }],
}

test('a supplier’s file is looked at, matched, loaded and its rejected rows written, all from the command line', async () => {
  const file = write('Marken.csv', Buffer.from('Marke;Land\r\nHÄrrow;DE\r\n-;FR\r\n', 'latin1'))
  const seen = await run('layouts', 'preview', file)
  expect(seen).toMatchObject({ code: 0, stderr: '' })
  expect(seen.stdout).toMatch(/Encoding windows-1252: open[\s\S]*Separator “;”: certain[\s\S]*HÄrrow/)
  const draft = path.join(shop.folder, 'draft.json')
  expect(await run('layouts', 'propose', file, '--draft', draft)).toMatchObject({ code: 0 })
  expect(await run('layouts', 'propose', file, '--draft', draft)).toMatchObject({ code: 2 })
  expect(JSON.parse(readFileSync(draft, 'utf8'))).toMatchObject({ ...layout, name: 'Marken' })

  const saved = await run('layouts', 'save', write('layout.json', JSON.stringify(layout)))
  expect(saved).toMatchObject({
    code: 0,
    stdout: expect.stringMatching(/^Saved: Harrow brands: for brands\.csv/),
  })
  expect((await run('layouts')).stdout).toMatch(/^Harrow brands: for brands.csv, 1 columns matched/)

  const rejects = path.join(shop.folder, 'rejects.csv')
  const loaded = await run('load', file, '--layout', 'harrow brands', '--rejects', rejects, '--json')
  expect(loaded.code).toBe(1)
  expect(JSON.parse(loaded.stdout)).toMatchObject({
    files: [{ file: 'Marken.csv', added: 1, rejected: 1 }],
    rejected: [{ file: 'Marken.csv', line: 3, column: 'Marke', value: '-', mend: null }],
  })
  expect(await run('load', rejects, '--layout', 'harrow brands', '--dry-run')).toMatchObject({ code: 1 })

  expect(await run('layouts', 'rename', 'harrow brands', '--to', 'Harrow')).toMatchObject({ code: 0 })
  expect(await run('layouts', 'remove', 'Harrow')).toMatchObject({ code: 0 })
  expect((await run('layouts')).stdout).toMatch(/^No layout is saved yet/)
})

test.each<[string, string[], RegExp]>([
  ['a layout that is not there', ['load', 'x.csv', '--layout', 'Absent'], /No layout is called “Absent”/],
  [
    'an encoding that is none',
    ['load', 'x.csv', '--encoding', 'ebcdic'],
    /--encoding knows utf-8, .* “ebcdic” is none/,
  ],
  ['a task that is none', ['layouts', 'forget'], /layouts takes preview, propose, save/],
  ['a task without its file', ['layouts', 'preview'], /layouts preview needs more/],
  ['a new name that is missing', ['layouts', 'rename', 'Harrow'], /layouts needs --to/],
])('%s: one line that says what to do, and exit code 2', async (_title, given, line) => {
  const ran = await run(...given)
  expect(ran).toMatchObject({ code: 2, stdout: '', stderr: expect.stringMatching(line) })
  expect(ran.stderr.trimEnd().split('\n')).toHaveLength(1)
})
