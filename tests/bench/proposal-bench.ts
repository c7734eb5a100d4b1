import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { v7 as newId } from 'uuid'
import { openApplication } from '../../electron/application.ts'
import type { Proposal } from '../../shared-schemas/proposal.ts'
import { written } from './measure.ts'

const partCount = 50_000
const suppliers = 6

/**
 * The whole proposal of a shop with 50,000 parts and three years of usage, most of it slow: levels, needs, interchangeable
 * stock, orders and the order check. The shop is generated, the same each time.
 */
export async function run(): Promise<void> {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'tallyplate-bench-'))
  try {
    writeShop(folder)
    const shop = openApplication({
      databaseFile: path.join(folder, 'shop.sqlite'),
      sampleFolder: folder,
      now: () => new Date('2026-11-23T09:00:00Z'),
      newId: () => newId(),
      device: 'bench',
      logDefect: (_reference, request, defect) => console.error(request, defect),
    })
    const state = await shop.opened
    if (state.state !== 'ready') throw new Error(`the bench shop did not open: ${JSON.stringify(state)}`)
    const levelsStart = performance.now()
    await shop.ask('reorder.list-levels', {})
    console.log(`the levels alone: ${written(performance.now() - levelsStart)} ms`)
    for (const which of ['first', 'second']) {
      const before = process.cpuUsage()
      const start = performance.now()
      const reply = await shop.ask('proposal.make-proposal', {})
      const took = performance.now() - start
      const { user, system } = process.cpuUsage(before)
      if (!reply.ok) throw new Error(JSON.stringify(reply.problem))
      const { orders, parts, enough, proofs } = reply.value as Proposal
      const lines = orders.reduce((sum, order) => sum + order.lines.length, 0)
      console.log(
        `${which} proposal: ${written(took)} ms (of the processor ${written((user + system) / 1000)}); ${parts} parts, ${enough} have enough, ${lines} lines to ${orders.length} suppliers; gap ${proofs.map(({ gap, gapShare }) => `${gap} (${(gapShare * 100).toFixed(4)} %)`).join()}; wanted 10,000 ms`,
      )
    }
    shop.close()
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

function writeShop(folder: string): void {
  const random = drawFrom(20_261_123)
  const write = (name: string, header: string, rows: readonly string[]) =>
    writeFileSync(path.join(folder, name), `${header}\n${rows.join('\n')}\n`)
  const numbers = Array.from({ length: partCount }, (_, at) => `GP-${String(at).padStart(5, '0')}`)
  write(
    'families.csv',
    'family,name,function,appliance_types,hazards,safety_device',
    Array.from({ length: 500 }, (_, at) => `f${at},Family ${at},drive,washer,moving,no`),
  )
  write(
    'parts.csv',
    'part_number,family,maker,kind,description,gtin,attributes',
    numbers.map((number, at) => `${number},f${at % 500},Quorvane,genuine,Part ${at},,`),
  )
  write(
    'suppliers.csv',
    'supplier,name,currency,minimum_order,carriage,carriage_paid_from,lead_days',
    Array.from(
      { length: suppliers },
      (_, at) => `S${at},Supplier ${at},GBP,${20 + at},6.50,${150 + 50 * at},${2 + at}`,
    ),
  )
  write(
    'offers.csv',
    'supplier,part_number,supplier_code,price,from_quantity,pack,minimum',
    numbers.flatMap((number, at) => {
      const usual = 2 + random() * 60
      return [at % suppliers, (at + 1 + Math.floor(random() * (suppliers - 1))) % suppliers].map(
        supplier => `S${supplier},${number},C${at},${(usual * (0.9 + 0.2 * random())).toFixed(2)},1,1,1`,
      )
    }),
  )
  write('locations.csv', 'location,kind,name', ['SHOP,shop,The shop'])
  write(
    'opening_stock.csv',
    'location,part_number,quantity,bin',
    numbers.filter(() => random() < 0.98).map(number => `SHOP,${number},${4 + Math.floor(random() * 8)},`),
  )
  write('usage.csv', 'date,location,part_number,quantity,job', makeUsage(numbers, random))
}

/** Three years of weeks; a part sells every so many weeks, most of them seldom. */
function makeUsage(numbers: readonly string[], random: () => number): string[] {
  const last = Date.parse('2026-11-16T00:00:00Z')
  return numbers.flatMap(number => {
    const everyWeeks = 4 + Math.floor(random() ** 3 * 150)
    const rows: string[] = []
    for (
      let back = Math.floor(random() * everyWeeks);
      back < 156;
      back += 1 + Math.floor(random() * 2 * everyWeeks)
    ) {
      const day = new Date(last - back * 7 * 86_400_000).toISOString().slice(0, 10)
      rows.push(`${day},SHOP,${number},${1 + Math.floor(random() * 3)},`)
    }
    return rows
  })
}

/** Numbers between 0 and 1 from a linear congruence (the constants of Numerical Recipes). */
function drawFrom(seed: number): () => number {
  let state = seed
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0
    return state / 2 ** 32
  }
}
