import { openDatabase } from '../../electron/database/open-database.ts'
import { modelLookupHandlers } from '../../electron/model-lookup/handlers.ts'

/** Opens the shop whose file is the first argument, looks one number up, and prints how many milliseconds both took, by the clock and of the processor. */
const start = performance.now()
const usedBefore = process.cpuUsage()
const database = openDatabase(process.argv[2] ?? '')
const found = await modelLookupHandlers({ database })['model-lookup.find-models'](
  { text: 'AEC4O44/01', top: 5 },
  { report: () => {} },
)
const took = performance.now() - start
const { user, system } = process.cpuUsage(usedBefore)
database.close()
if (found.openModels === 0) throw new Error('the bench catalogue has a model of this number')
console.log(`${took} ${(user + system) / 1000}`)
