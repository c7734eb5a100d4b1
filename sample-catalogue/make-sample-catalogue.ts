import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { buildCatalogue } from './build-catalogue.ts'
import { catalogueFiles } from './catalogue-rows.ts'
import { checkSample } from './check-sample.ts'
import { writeCsv } from './write-csv.ts'

/** Makes the sample shop beside this script, after checking it: nothing is written while anything is wrong. */
const catalogue = buildCatalogue()
const report = checkSample(catalogue)
for (const fault of report.faults) console.error(fault)
if (report.faults.length > 0) {
  console.error(
    `${report.faults.length} faults: nothing written. Mend the make-… file that the row comes from.`,
  )
  process.exit(1)
}
let bytes = 0
for (const file of catalogueFiles) {
  const text = writeCsv(file, catalogue[file])
  bytes += Buffer.byteLength(text)
  writeFileSync(join(import.meta.dirname, file), text)
}
for (const [what, count] of Object.entries(report.counts)) console.log(`${String(count).padStart(7)} ${what}`)
console.log(`${(bytes / 1_000_000).toFixed(1).padStart(7)} MB in ${catalogueFiles.length} files`)
