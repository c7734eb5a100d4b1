import { afterAll, beforeAll, expect, test } from 'vitest'
import { levels } from '../../electron/hosts/command-line/levels-command.ts'
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

const run = (...given: readonly string[]) =>
  runTallyplate([levels.name, ...given], { TALLYPLATE_FILE: shop.databaseFile })

test('levels answers with the fields that scripts rely on', async () => {
  const { code, stdout } = await run(
    '--as-of',
    '2026-11-23',
    '--fill-rate',
    '0.9',
    '--bucket',
    'month',
    '--json',
  )
  expect(code).toBe(0)
  const { asOf, bucket, rows } = JSON.parse(stdout)
  expect([asOf, bucket]).toEqual(['2026-11-23', 'month'])
  expect(rows[0]).toMatchObject({ targetFillRate: 0.9 })
  for (const field of ['partNumber', 'family', 'demandClass'])
    expect(typeof rows[0][field], field).toBe('string')
  for (const field of ['meanPerBucket', 'reorderPoint', 'orderUpTo', 'expectedFillRate'])
    expect(typeof rows[0][field], field).toBe('number')
})

test('a fill rate that is no share, and a bucket that is neither, are told in one line', async () => {
  expect(await run('--fill-rate', '95')).toMatchObject({
    code: 2,
    stdout: '',
    stderr: '--fill-rate takes a share from 0.5 to 0.999, such as 0.95; “95” is none.\n',
  })
  expect(await run('--bucket', 'day')).toMatchObject({ code: 2, stdout: '' })
})

test('before anything was asked for, levels says so', async () => {
  const { code, stdout } = await run('--as-of', '1990-01-31')
  expect([code, stdout]).toEqual([
    0,
    'Nothing was asked for up to 1990-01-31. Load usage.csv, or give a later --as-of.\n',
  ])
})
