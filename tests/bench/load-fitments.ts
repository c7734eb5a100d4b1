import { loadFiles } from '../../electron/catalogue/load-files.ts'
import { openDatabase } from '../../electron/database/open-database.ts'

/**
 * A program of its own that loads a catalogue file into a database, so that its memory can be measured: it prints the
 * report, how long it took, of that its own time on a processor, the longest stretch of that time in which nobody else was answered, and the most memory it ever had.
 */
const [databaseFile, path, edition = ''] = process.argv.slice(2) as [string, string, string?]
const database = openDatabase(databaseFile)
let [last, longest] = [ownMilliseconds(), 0]
const watch = setInterval(() => {
  const now = ownMilliseconds()
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
const ownTime = ownMilliseconds()
const peakMegabytes = process.resourceUsage().maxRSS / 1024
console.log(JSON.stringify({ files: report.files, milliseconds, ownTime, longest, peakMegabytes }))
database.close()

/** Time on a processor, which other programs of a busy machine do not lengthen. */
function ownMilliseconds(): number {
  const { user, system } = process.cpuUsage()
  return (user + system) / 1000
}
