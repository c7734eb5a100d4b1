import { mkdtempSync, rmSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { withCatalogueFolder } from '../builders/catalogue-folder.ts'
import { ledgerCatalogue } from '../electron/stock-ledger/ledger-catalogue.ts'
import { killStragglers, runTallyplate } from './run-program.ts'

let folder: string
const ask = (...given: string[]) => runTallyplate([...given, '--file', path.join(folder, 'shop.sqlite')])
const move = (...given: string[]) => ask('move', '--part', '480121', '--reason', 'as told', ...given)

beforeAll(async () => {
  folder = mkdtempSync(path.join(os.tmpdir(), 'tallyplate-move-'))
  await withCatalogueFolder(ledgerCatalogue, catalogue => ask('load', catalogue))
})
afterAll(() => {
  rmSync(folder, { recursive: true, force: true })
  killStragglers()
})

test('a part goes from the supplier to the shop, to the van, and into a job, and the book follows', async () => {
  await move('--quantity', '5', '--from', 'supplier', '--to', 'shop', '--cost', '4.20')
  await move('--quantity', '2', '--from', 'shop', '--to', 'van-1')
  const taken = await move('--quantity', '1', '--from', 'van-1', '--job', 'J1', '--initials', 'AB', '--json')
  expect(taken.code).toBe(0)
  expect(JSON.parse(taken.stdout).movement).toMatchObject({
    partNumber: '480121',
    quantity: 1,
    from: 'van-1',
    to: 'job',
    kind: 'issue',
    reference: 'J1',
    initials: 'AB',
  })
  const book = await ask('onhand', '--json')
  expect(JSON.parse(book.stdout).rows).toEqual([
    { location: 'shop', partNumber: '480121', quantity: 3, reserved: 0, bin: null },
    { location: 'van-1', partNumber: '480121', quantity: 1, reserved: 0, bin: null },
  ])
})

test('more than is there is refused with what to do, unless it is said that it was used early', async () => {
  const refused = await move('--quantity', '7', '--from', 'van-2', '--job', 'J2')
  expect(refused).toMatchObject({ code: 1, stdout: '' })
  expect(refused.stderr).toBe(
    'van-2 has 0 of 480121 by the book, not 7. Look again, or say that it was used before it was booked.\n',
  )
  expect((await move('--quantity', '7', '--from', 'van-2', '--job', 'J2', '--early')).code).toBe(0)
  expect((await ask('verify')).code).toBe(0)
})

test('what is no movement is wrong use, and says what is missing', async () => {
  expect(await move('--quantity', '1', '--from', 'shop')).toMatchObject({
    code: 2,
    stderr: 'move needs --to. See tallyplate move --help.\n',
  })
  expect((await move('--quantity', '0', '--from', 'shop', '--to', 'van-1')).code).toBe(2)
  expect((await move('--quantity', '1', '--from', 'supplier', '--to', 'customer')).code).toBe(1)
})
