import { catalogueHandlers } from '../../../electron/catalogue/handlers.ts'
import { openDatabase } from '../../../electron/database/open-database.ts'

/** A program of its own that loads a folder into a shop's file, and says when it begins and when it has done. */
const [file = '', path = ''] = process.argv.slice(2)
const database = openDatabase(file)
const handlers = catalogueHandlers({
  database,
  now: () => new Date('2026-11-23T09:00:00Z'),
  device: 'test-counter',
  homeFolder: import.meta.dirname,
  openOwnHandle: () => ({ handle: openDatabase(file), release: () => {} }),
  recordOpeningStock: () => {
    throw new Error('these files hold no opening stock')
  },
})
process.send?.('begins')
await handlers['catalogue.load-files'](
  { path, dryRun: false, strict: true, edition: false, showChanges: 0 },
  { report: () => {} },
)
process.send?.('done')
