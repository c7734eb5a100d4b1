import path from 'node:path'
import { expect, test } from 'vitest'
import { verifyDatabase } from '../../../electron/database/verify-database.ts'
import { openTestCatalogue } from '../../builders/open-test-catalogue.ts'

test('the sample shop is taken whole, and a second load of it changes nothing', async () => {
  const { database, loadPath } = openTestCatalogue()
  const sample = path.join(import.meta.dirname, '../../../sample-catalogue')
  const first = await loadPath(sample, { strict: true })
  expect(first.files.reduce((sum, { added }) => sum + added, 0)).toBeGreaterThan(100_000)
  const second = await loadPath(sample, { strict: true })
  for (const { file, added, changed } of second.files)
    expect({ file, added, changed }).toEqual({ file, added: 0, changed: 0 })
  expect(verifyDatabase(database).filter(({ ok }) => !ok)).toEqual([])
}, 60_000)
