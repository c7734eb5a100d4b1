import { execFileSync, spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { z } from 'zod'
import { listModelsOfTerms, listTermsOfModel } from '../../electron/catalogue/fitments/fitment-queries.ts'
import type { DatabaseHandle } from '../../electron/database/handles.ts'
import { openDatabase } from '../../electron/database/open-database.ts'
import { listFamiliesOfTerms } from '../../electron/fit-check/model-facts-queries.ts'
import { fillCatalogue, writeFitments } from './generate-catalogue.ts'
import { generateModels, seededChoice } from './generate-models.ts'
import { printTimings, timeEach, written } from './measure.ts'

/**
 * Fitments at a shop's real size: loaded by a program of its own beside the sqlite3 shell's `.import` with one index,
 * then read from either side. `TALLYPLATE_BENCH_FITMENTS=20000000` takes the full size, with a million models.
 */
export async function run(): Promise<void> {
  const fitments = Number(process.env.TALLYPLATE_BENCH_FITMENTS ?? 1_000_000)
  const folder = mkdtempSync(path.join(os.tmpdir(), 'tallyplate-fitments-'))
  try {
    await measure(folder, fitments)
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

async function measure(folder: string, fitments: number): Promise<void> {
  const models = generateModels(Math.max(10_000, fitments / 20))
  const list = path.join(folder, 'fitments.csv')
  const { statements, rows } = await writeFitments(list, models, fitments)
  const megabytes = statSync(list).size / 1e6
  console.log(
    `${models.length} models, ${rows} fitments in ${statements} statements, ${megabytes.toFixed(0)} MB of CSV`,
  )
  const file = path.join(folder, 'shop.tallyplate')
  const before = openDatabase(file)
  fillCatalogue(before, models, statements)
  before.close()
  models.length = 0

  const loaded = load(file, list)
  const shell = timeShell(folder, list)
  console.log(`loading: ${wordTook(loaded)}, ${perSecond(rows, loaded.milliseconds)} rows a second`)
  console.log(`sqlite3 .import and one index: ${wordTook(shell)}`)
  const [ratio, ownRatio] = [loaded.milliseconds / shell.milliseconds, loaded.ownTime / shell.ownTime]
  console.log(`ratio ${ratio.toFixed(2)}, by own time ${ownRatio.toFixed(2)}; wanted 1.3, aim 0.8`)
  console.log(
    `memory at most ${loaded.peakMegabytes.toFixed(0)} MB; wanted 1500 MB, aim 600 MB; ` +
      `nobody was answered for ${written(loaded.longest)} ms of its own time at worst`,
  )
  const again = load(file, list)
  console.log(`loading the same again: ${wordTook(again)}, ${JSON.stringify(again.files)}`)
  const database = openDatabase(file)
  try {
    await measureReading(database, rows)
  } finally {
    database.close()
  }
}

const loadReport = z.object({
  files: z.array(z.object({ added: z.int(), changed: z.int(), unchanged: z.int(), rejected: z.int() })),
  milliseconds: z.number(),
  ownTime: z.number(),
  longest: z.number(),
  peakMegabytes: z.number(),
})

function load(file: string, list: string) {
  const program = path.join(import.meta.dirname, 'load-fitments.ts')
  return loadReport.parse(
    JSON.parse(execFileSync(process.execPath, [program, file, list], { encoding: 'utf8' })),
  )
}

interface Took {
  readonly milliseconds: number
  readonly ownTime: number
}

/** The same list as a table of texts as the shell makes it, and an index from the model: apt-get install sqlite3. */
function timeShell(folder: string, list: string): Took {
  const script = path.join(folder, 'import.sql')
  writeFileSync(
    script,
    `.mode csv\n.import ${list} fitments\nCREATE INDEX of_model ON fitments (brand, model_number);\n`,
  )
  const start = performance.now()
  const command = `TIMEFORMAT='%U %S'; time sqlite3 '${path.join(folder, 'shell.db')}' '.read ${script}'`
  const { status, stderr } = spawnSync('bash', ['-c', command], { encoding: 'utf8' })
  const milliseconds = performance.now() - start
  if (status !== 0) throw new Error(`the sqlite3 shell is needed for comparison: ${stderr}`)
  const [user = Number.NaN, system = Number.NaN] = stderr.trim().split(' ').map(Number)
  return { milliseconds, ownTime: (user + system) * 1000 }
}

/** Its own time is what it had of a processor, which other programs of a busy machine do not lengthen. */
function wordTook({ milliseconds, ownTime }: Took): string {
  return `${written(milliseconds)} ms, ${written(ownTime)} ms of its own time`
}

function perSecond(rows: number, milliseconds: number): string {
  return Math.round((rows / milliseconds) * 1000).toLocaleString('en')
}

async function measureReading(database: DatabaseHandle, rows: number): Promise<void> {
  const pages = [
    ...database.tuples<[string, number]>(
      "SELECT name, sum(pgsize) FROM dbstat WHERE name LIKE 'fitment_by%' GROUP BY name",
    ),
  ]
  const bytes = pages.reduce((sum, [, size]) => sum + size, 0)
  console.log(
    `bytes a fitment, both directions: ${(bytes / rows).toFixed(2)}; wanted 26, aim 8 (${pages.map(([name, size]) => `${name} ${(size / rows).toFixed(2)}`).join(', ')})`,
  )
  const choose = seededChoice(7)
  const [[modelCount] = [0]] = [...database.tuples<[number]>('SELECT count(*) FROM model')]
  const asked = Array.from({ length: 5000 }, () => 1 + choose(modelCount))
  const ofModel = await timeEach(asked, id => listTermsOfModel(database, id))
  printTimings('what is said of a model', ofModel, { wanted: 'p95 0.1 ms, aim 0.02 ms' })
  const families = await timeEach(asked, id => listFamiliesOfTerms(database, listTermsOfModel(database, id)))
  printTimings('families of a model', families, { wanted: 'p95 0.1 ms, aim 0.02 ms' })
  const [largest] = [
    ...database.tuples<[number, number]>(
      'SELECT terms_id, sum(models) AS all_models FROM fitment_by_terms GROUP BY terms_id ORDER BY all_models DESC LIMIT 1',
    ),
  ]
  if (largest === undefined) throw new Error('the list has fitments')
  const ofTerms = await timeEach(Array.from({ length: 2000 }), () => listModelsOfTerms(database, largest[0]))
  printTimings(`the ${largest[1]} models of the largest family`, ofTerms, { wanted: 'p95 1 ms, aim 0.4 ms' })
}
