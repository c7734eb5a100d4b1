import { loadFiles } from '../../electron/catalogue/load-files.ts'
import { openDatabase } from '../../electron/database/open-database.ts'

/**
 * A program of its own that loads a catalogue file into a database, so that its memory can be measured: it prints the
 * report, how long it took, how long nobody else was answered at worst, and the most memory it ever had.
 */
const [databaseFile, path, edition = ''] = process.argv.slice(2) as [string, string, string?]
const database = openDatabase(databaseFile)
let [last, longest] = [performance.now(), 0]
const watch = setInterval(() => {
  const now = performance.now()
  longest = Math.max(longest, now - last)
  last = now
}, 1)
const start = performance.now()
const report = await loadFiles(
  {
    database,
    openOwnHandle: () => ({ handle: database, release: () => {} }),
    now: () => new Date(),
    device: 'bench',
    recordOpeningStock: () => {
      throw new Error('there is no opening stock among fitments')
    },
  },
  { path, dryRun: false, strict: false, edition: edition !== '', showChanges: 0 },
  { report: () => {} },
)
const milliseconds = performance.now() - start
clearInterval(watch)
const peakMegabytes = process.resourceUsage().maxRSS / 1024
console.log(JSON.stringify({ files: report.files, milliseconds, longest, peakMegabytes }))
database.close()
