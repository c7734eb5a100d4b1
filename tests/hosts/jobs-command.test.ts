import { mkdtempSync, rmSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { withCatalogueFolder } from '../builders/catalogue-folder.ts'
import { orderShop } from '../builders/order-shop.ts'
import { killStragglers, runTallyplate } from './run-program.ts'

const jobs = `job,date,van,brand,model_number,symptom,families_needed,finished_first_visit
F-1,2026-11-20,VAN1,Quorvane,QV-1042/A,does not drain,pump,
F-2,2026-11-19,VAN1,Quorvane,QV-1042/B,door,lock,no
`

let folder: string
const ask = (...given: string[]) => runTallyplate([...given, '--file', path.join(folder, 'shop.sqlite')])

beforeAll(async () => {
  folder = mkdtempSync(path.join(os.tmpdir(), 'tallyplate-jobs-'))
  await withCatalogueFolder({ ...orderShop, 'jobs.csv': jobs }, catalogue => ask('load', catalogue))
  await ask(
    'move',
    '--part',
    'P-100',
    '--quantity',
    '1',
    '--from',
    'VAN1',
    '--job',
    'F-1',
    '--reason',
    'taken',
  )
})
afterAll(() => {
  rmSync(folder, { recursive: true, force: true })
  killStragglers()
})

test('open jobs are listed, and one is told whole, with what was taken for it', async () => {
  const listed = await ask('jobs')
  expect(listed).toMatchObject({ code: 0, stderr: '' })
  expect(listed.stdout).toMatch(
    /^F-1 +2026-11-20 +VAN1 +open +Quorvane QV-1042\/A +does not drain +1 in hand\n$/,
  )
  const told = await ask('jobs', 'F-1', '--json')
  expect(JSON.parse(told.stdout)).toMatchObject({
    ...{ job: 'F-1', state: 'open' },
    parts: [{ partNumber: 'P-100', verdict: 'fits', taken: 1, inHand: 1 }],
  })
})

test('what is no job, and no state, says what to do', async () => {
  expect(await ask('jobs', 'F-9')).toMatchObject({
    ...{ code: 1, stdout: '' },
    stderr: 'There is no job F-9. Check the number on its sheet, or open a new job.\n',
  })
  expect(await ask('jobs', '--state', 'gone')).toMatchObject({ code: 2 })
})
