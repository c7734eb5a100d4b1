import { mkdtempSync, rmSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { withCatalogueFolder } from '../builders/catalogue-folder.ts'
import { faultCatalogue } from '../builders/fault-catalogue.ts'
import { killStragglers, runTallyplate } from './run-program.ts'

let folder: string
const faults = (...given: string[]) =>
  runTallyplate(['faults', ...given, '--file', path.join(folder, 'shop.sqlite')])

beforeAll(async () => {
  folder = mkdtempSync(path.join(os.tmpdir(), 'tallyplate-faults-'))
  await withCatalogueFolder(faultCatalogue, catalogue =>
    runTallyplate(['load', catalogue, '--file', path.join(folder, 'shop.sqlite')]),
  )
})
afterAll(() => {
  rmSync(folder, { recursive: true, force: true })
  killStragglers()
})

const drain = ['--model', 'OW 4512/01', '--symptom', 'Water stays in']

test('a symptom by another word, on a model, is told with the next check and its caution; it needs a person', async () => {
  const asked = await faults(...drain, '--outcome', 'rinse hold=without hold')
  expect(asked.code).toBe(1)
  expect(asked.stdout).toContain('washer, does not drain: 2 checks may still tell.')
  expect(asked.stdout).toMatch(/Next: filter\n {2}! Turn the water off/)
})

test('readings and outcomes end in the parts worth ordering, as JSON', async () => {
  const ended = await faults(
    ...drain,
    '--outcome',
    'filter=clear',
    '--reading',
    'coil of the pump=OL',
    '--json',
  )
  expect(ended.code).toBe(0)
  const told = JSON.parse(ended.stdout)
  expect(told).toMatchObject({ symptom: 'does not drain', end: 'settled', settledOn: 1 })
  expect(told.remedies[0]).toMatchObject({ endsIn: 'part', families: [{ family: 'drain-pump' }] })
  expect(
    told.worth.map(({ family, verdict }: { family: string; verdict: string }) => [family, verdict]),
  ).toEqual([['drain-pump', 'fits']])
})

test('licensed work is left to who is licensed, and no step is given', async () => {
  const { code, stdout } = await faults(
    '--type',
    'washer',
    '--symptom',
    'fuse goes',
    '--outcome',
    'other appliances=yes',
  )
  expect(code).toBe(0)
  expect(stdout).toContain(
    'This is work on fixed wiring: only for a person licensed or certified for it where you are',
  )
  expect(stdout).not.toMatch(/Next:|Measure/)
})

test.each([
  ['a check that the guide does not have', ['--outcome', 'belt=broken'], 1, 'The guide has no check “belt”'],
  ['an outcome of none of its', ['--outcome', 'filter=gone'], 1, 'It is one of: clear, blocked.'],
  ['a reading that cannot be read', ['--reading', 'coil of the pump=lots'], 1, '“lots” cannot be read'],
  ['an answer without an outcome', ['--outcome', 'filter'], 2, '--outcome takes name=value'],
])('%s is refused with what there is', async (_, given, code, words) => {
  const refused = await faults(...drain, ...given)
  expect(refused).toMatchObject({ code, stdout: '' })
  expect(refused.stderr).toContain(words)
})
