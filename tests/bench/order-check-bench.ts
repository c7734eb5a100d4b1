import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import Database from 'better-sqlite3'
import Papa from 'papaparse'
import type { Application } from '../../electron/application.ts'
import { normaliseNumber } from '../../electron/catalogue/normalise-number.ts'
import type { OrderLine } from '../../shared-schemas/order-check.ts'
import { printTimings, timeEach, written } from './measure.ts'
import { openBenchShop, sampleFolder } from './open-bench-shop.ts'

/**
 * An order of 1,000 lines for the sample shop, checked through the engine's door: half the lines for an appliance of
 * which the catalogue speaks, half for stock. Beside it, what SQLite alone takes to find the part of each line.
 */
export async function run(): Promise<void> {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'tallyplate-bench-'))
  try {
    const databaseFile = path.join(folder, 'shop.tallyplate')
    const shop = await openBenchShop(databaseFile)
    const lines = makeOrder()
    const first = performance.now()
    const found = await check(shop, lines)
    console.log(`first check after opening: ${written(performance.now() - first)} ms`)
    console.log(
      `${lines.length} lines: ${found.stops} stops, ${found.cautions} cautions, ${found.notes} notes`,
    )
    const checks = await timeEach(Array.from({ length: 40 }), () => check(shop, lines))
    const reference = await timeReference(databaseFile, lines)
    console.log(`processor time of one check: ${written(await spentOnOne(() => check(shop, lines)))} ms`)
    printTimings('check of 1,000 order lines', checks, {
      wanted: 'p95 150 ms',
      reference: `finding their parts by number, bare SQLite p95 ${written(reference.p95)} ms`,
    })
    shop.close()
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

/** Every seventh fitment that names a whole model or a part, then every part in turn: the same order each time. */
function makeOrder(): OrderLine[] {
  const parts = readSample<{ part_number: string; family: string }>('parts.csv')
  const ofFamily = Map.groupBy(parts, ({ family }) => family)
  const fitments = readSample<{ family: string; part_number: string; brand: string; model_number: string }>(
    'fitments.csv',
  ).filter(({ model_number }) => !/[*?]/.test(model_number))
  const forAppliances = Array.from({ length: 500 }, (_, at) => fitments[(at * 7919) % fitments.length])
  const named = forAppliances.flatMap((fitment, at) => {
    if (fitment === undefined) return []
    const siblings = ofFamily.get(fitment.family) ?? []
    const partNumber = fitment.part_number || siblings[at % Math.max(1, siblings.length)]?.part_number
    return partNumber === undefined
      ? []
      : [{ partNumber, quantity: '1', brand: fitment.brand, modelNumber: fitment.model_number }]
  })
  const forStock = Array.from({ length: 1000 - named.length }, (_, at) => ({
    partNumber: parts[(at * 31) % parts.length]?.part_number ?? '',
    quantity: String((at % 12) + 1),
  }))
  return [...named, ...forStock].map((line, at) => ({ line: at + 2, ...line }))
}

function readSample<Row>(file: string): Row[] {
  const text = readFileSync(path.join(sampleFolder, file), 'utf8')
  return Papa.parse<Row>(text, { header: true, skipEmptyLines: true }).data
}

async function check(shop: Application, lines: readonly OrderLine[]) {
  const reply = await shop.ask('order-check.check-order', { lines })
  if (!reply.ok) throw new Error(JSON.stringify(reply.problem))
  return reply.value as { readonly stops: number; readonly cautions: number; readonly notes: number }
}

/** What one run costs the processor, which other work on the machine stretches less than the clock. */
async function spentOnOne(work: () => Promise<unknown>, runs = 10): Promise<number> {
  const before = process.cpuUsage()
  for (let run = 0; run < runs; run += 1) await work()
  const { user, system } = process.cpuUsage(before)
  return (user + system) / 1000 / runs
}

function timeReference(databaseFile: string, lines: readonly OrderLine[]) {
  const database = new Database(databaseFile, { readonly: true })
  const find = database.prepare('SELECT part_id FROM part WHERE part_key = ?')
  return timeEach(Array.from({ length: 5 }), () => {
    for (const { partNumber } of lines) find.get(normaliseNumber(partNumber))
  }).finally(() => database.close())
}
