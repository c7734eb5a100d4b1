import { readFileSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import papaparse from 'papaparse'
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

/** Writes the order into a file of its own and checks it. */
async function checkOrder(order: string, ...more: readonly string[]) {
  const file = path.join(shop.folder, 'order.csv')
  writeFileSync(file, order)
  return runTallyplate(['check', file, ...more], { TALLYPLATE_FILE: shop.databaseFile })
}

const header = 'part_number,quantity,brand,model_number,made,serial\n'

test('an order of which nothing is wrong ends with 0 and says so', async () => {
  const { code, stdout, stderr } = await checkOrder(`${header}1E5,1,Tollbrae,TB 77310,,\n`)
  expect(stderr).toBe('')
  expect(stdout).toMatch(/^line +2 +1 x +1E5 +Drum belt +Tollbrae TB 77310: fits\n {2}CAUTION No supplier/)
  expect(stdout).toMatch(
    /1 line: 0 stops, 2 cautions, 1 note\. Nothing stops this order; look at the cautions/,
  )
  expect(code).toBe(0)
})

test('an order with a stop ends with 1, and the JSON is the contract’s', async () => {
  const order = `${header}00480122,1,Quorvane,QV-1042/B,,\n00480121,2,,,,\n480121,1,,,,\n`
  const { code, stdout } = await checkOrder(order, '--json')
  const checked = JSON.parse(stdout) as {
    lines: { line: number; partNumber: string; quantity: number; verdict: string | null; flags: unknown[] }[]
    stops: number
    cautions: number
  }
  expect(
    checked.lines.map(({ line, partNumber, quantity, verdict }) => [line, partNumber, quantity, verdict]),
  ).toEqual([
    [2, '00480122', 1, 'ask'],
    [3, '00480121', 2, null],
    [4, '480121', 1, null],
  ])
  expect(checked.lines[0]?.flags[0]).toEqual({
    code: 'fit-not-decided',
    severity: 'stop',
    mayOverride: true,
    text: expect.stringMatching(/Read the date of making/),
  })
  expect(checked.stops).toBe(2)
  expect(code).toBe(1)
})

test('rows pasted from a spreadsheet are read too', async () => {
  const { code, stdout } = await checkOrder('00480122\t1\n1E5\t\n')
  expect(stdout).toMatch(/^line +1 +1 x +00480122[\s\S]*\nline +2 +1 x +1E5/)
  expect(code).toBe(0)
})

test('what was found is written beside the lines, and no cell of it is a formula', async () => {
  const out = path.join(shop.folder, 'checked.csv')
  const order = `${header}00480122,1,Quorvane,QV-1042/A,,\n=1+1,1,,,,\n00480122,-3,,,,\n`
  expect((await checkOrder(order, '--out', out)).code).toBe(1)
  const text = readFileSync(out, 'utf8')
  const { data, errors } = papaparse.parse<Record<string, string>>(text, {
    header: true,
    skipEmptyLines: true,
  })
  expect(errors).toEqual([])
  expect(data.map(row => [row.line, row.part_number, row.quantity, row.verdict])).toEqual([
    ['2', '00480122', '1', 'fits'],
    ['3', "'=1+1", '1', ''],
    ['4', '00480122', '-3', ''],
  ])
  expect(data[1]?.stops).toMatch(/has no part =1\+1/)
  // OWASP, "CSV Injection": a cell that begins with = + - @, a tab or a carriage return may be run as a formula. A
  // figure below nought is none: it stays a figure.
  const cells = data.flatMap(row => Object.values(row))
  expect(cells.filter(cell => /^[=+\-@\t\r]/.test(cell) && !/^-\d+$/.test(cell))).toEqual([])
  expect((await checkOrder(order, '--out', out)).code).toBe(1)
})

test.each<[string, string, readonly string[], RegExp]>([
  ['another column', 'part_number,menge\n1E5,1\n', [], /unknown column menge\. Mend the first line/],
  ['an empty file', '', [], /no line of an order stands in it/],
  ['a supplier that nobody knows', '1E5,1\n', ['--supplier', 'NOONE'], /No supplier is called “NOONE”/],
])('%s: one line that says what to do, and exit code 2', async (_title, order, more, line) => {
  const { code, stdout, stderr } = await checkOrder(order, ...more)
  expect(stderr).toMatch(line)
  expect(stderr.trimEnd().split('\n')).toHaveLength(1)
  expect(stdout).toBe('')
  expect(code).toBe(2)
})

test('a file that is no earlier check is never written over', async () => {
  const other = path.join(shop.folder, 'other.csv')
  writeFileSync(other, 'what the shop keeps\n')
  const { code, stderr } = await checkOrder('1E5,1\n', '--out', other)
  expect(stderr).toMatch(/is there already and was left as it was/)
  expect(readFileSync(other, 'utf8')).toBe('what the shop keeps\n')
  expect(code).toBe(2)
})

test('a place that cannot be written is refused', async () => {
  const { code, stderr } = await checkOrder(
    '1E5,1\n',
    '--out',
    path.join(shop.folder, 'absent', 'checked.csv'),
  )
  expect(stderr).toMatch(/nothing can be written there: there is no such file/)
  expect(code).toBe(2)
})
