import { existsSync, mkdirSync, readdirSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { reorderShop } from '../builders/reorder-shop.ts'
import { killStragglers, runTallyplate } from './run-program.ts'
import { makeSmallShop, type SmallShop } from './small-shop.ts'

let shop: SmallShop
beforeAll(async () => {
  shop = await makeSmallShop(reorderShop)
})
afterAll(() => {
  killStragglers()
  shop.remove()
})

const run = (given: readonly string[]) => runTallyplate(given, { TALLYPLATE_FILE: shop.databaseFile })

interface Reordered {
  readonly asOf: string
  readonly sheets: readonly {
    readonly supplier: string
    readonly number: string
    readonly lines: number
    readonly value: string
    readonly files: readonly string[]
  }[]
  readonly held: readonly { readonly partNumber: string; readonly why: string }[]
}

test('what cannot be done is refused in one line before anything is ordered', async () => {
  for (const [given, wrong] of [
    [['reorder'], /needs --out/],
    [['reorder', '--out', path.join(shop.folder, 'x'), '--as-of', 'Monday'], /--as-of takes a date/],
    [['reorder', '--out', path.join(shop.folder, 'x'), '--fill-rate', '95'], /--fill-rate takes a share/],
  ] as const) {
    const { code, stderr } = await run(given)
    expect(stderr.trim()).toMatch(wrong)
    expect(code).toBe(2)
  }
  expect(existsSync(path.join(shop.folder, 'x'))).toBe(false)
})

test('a folder that cannot be written leaves no sheet that anybody waits for', async () => {
  const file = path.join(shop.folder, 'a-file')
  writeFileSync(file, 'not a folder')
  const { code, stderr } = await run(['reorder', '--as-of', '2026-11-23', '--out', file])
  expect(stderr).not.toBe('')
  expect(code).toBe(2)
  const { stdout } = await run(['sheets', '--json'])
  const { sheets } = JSON.parse(stdout) as { sheets: { state: string }[] }
  expect(sheets.length).toBeGreaterThan(0)
  expect(sheets.every(({ state }) => state === 'cancelled')).toBe(true)
})

test('orders go out as files, held lines end with 1, and a second run the same day orders nothing again', async () => {
  const out = path.join(shop.folder, 'orders')
  mkdirSync(out)
  const first = await run(['reorder', '--as-of', '2026-11-23', '--fill-rate', '0.95', '--out', out, '--json'])
  expect(first.stderr).toBe('')
  const { asOf, sheets, held } = JSON.parse(first.stdout) as Reordered
  expect(asOf).toBe('2026-11-23')
  expect(sheets.map(({ supplier }) => supplier).sort()).toEqual(['DALE', 'HOLM'])
  for (const { number, lines, value, files } of sheets) {
    expect(number).toMatch(/^\d{4}-\d{4}$/)
    expect(lines).toBeGreaterThan(0)
    expect(value).toMatch(/^\d+\.\d{2}$/)
    expect(files.filter(file => !existsSync(file))).toEqual([])
    expect(files.map(file => path.extname(file)).sort()).toEqual(['.csv', '.pdf', '.txt', '.xml'])
  }
  expect(readdirSync(out)).toHaveLength(sheets.length)
  expect(held).toEqual([
    { partNumber: 'N-1', why: expect.stringContaining('no supplier on record offers it') },
  ])
  expect(first.code).toBe(1)

  const second = await run(['reorder', '--as-of', '2026-11-23', '--out', out, '--json'])
  expect((JSON.parse(second.stdout) as Reordered).sheets).toEqual([])
  expect(readdirSync(out)).toHaveLength(sheets.length)
})

test('for people, each order is one line and what is held says why', async () => {
  const { stdout } = await run(['reorder', '--as-of', '2026-11-23', '--out', path.join(shop.folder, 'more')])
  expect(stdout).toMatch(
    /^Levels of 2026-11-23: \d+ parts looked at, \d+ have enough\.\nNothing is ordered\./,
  )
  expect(stdout).toMatch(/^HELD {2}N-1: /m)
})
