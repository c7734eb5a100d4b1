import { mkdtempSync, rmSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { inTransaction } from '../../electron/database/handles.ts'
import { openDatabase } from '../../electron/database/open-database.ts'
import { planStock } from '../../electron/reorder/plan-stock.ts'

const parts = 50_000
const weeks = 156
const asOf = '2026-11-23'

/** Series and levels of 50,000 parts with three years of weeks, from the shop's file to the last level. */
export async function run(): Promise<void> {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'tallyplate-levels-bench-'))
  try {
    const file = path.join(folder, 'shop.sqlite')
    const rows = fill(file)
    const database = openDatabase(file)
    const [began, used] = [performance.now(), process.cpuUsage()]
    const { plans, expectedFillRate } = planStock(
      {
        database,
        now: () => new Date(`${asOf}T09:00:00Z`),
        readOnOrder: () => new Map(),
        readAwaited: () => new Map(),
        readLeadTimes: () => new Map(),
      },
      { asOf, bucket: 'week' },
    )
    const seconds = (performance.now() - began) / 1000
    const { user, system } = process.cpuUsage(used)
    const kept = plans.filter(({ level }) => level.orderUpTo > 0).length
    console.log(
      `  ${plans.length.toLocaleString('en')} parts, ${rows.toLocaleString('en')} rows of usage: ${seconds.toFixed(1)} s, ${((user + system) / 1e6).toFixed(1)} s of it working (must 8 s); ` +
        `${kept.toLocaleString('en')} kept, expected fill rate ${(100 * expectedFillRate).toFixed(1)} %`,
    )
    database.close()
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

/** Few parts sell weekly and most sell a few times in three years, as in the trade; five suppliers with lead times of their own. */
function fill(file: string): number {
  const database = openDatabase(file)
  const random = seeded(20_261_128)
  let rows = 0
  inTransaction(database, writable => {
    writable.run("INSERT INTO family VALUES (1, 'pump', 'Pump', '', '', 0)")
    writable.run("INSERT INTO location VALUES (1, 'shop', 'shop', 'Shop')")
    for (let supplier = 1; supplier <= 5; supplier++)
      writable.run(
        'INSERT INTO supplier (supplier_id, supplier, name, currency, lead_days) VALUES (?, ?, ?, ?, ?)',
        ...[supplier, `S${supplier}`, `S${supplier}`, 'GBP', 3 * supplier],
      )
    for (let part = 1; part <= parts; part++) {
      writable.run(
        "INSERT INTO part VALUES (?, ?, ?, 1, '', 'genuine', '', NULL)",
        ...[part, `P${part}`, `P${part}`],
      )
      writable.run("INSERT INTO offer VALUES (?, ?, 1, NULL, '7.50', 1, 1)", ...[(part % 5) + 1, part])
      const chance = 0.6 * random() ** 5
      for (let week = 0; week < weeks; week++) {
        if (random() > chance) continue
        const day = new Date(Date.UTC(2026, 10, 22 - 7 * week)).toISOString().slice(0, 10)
        writable.run(
          'INSERT INTO usage (date, location_id, part_id, job, quantity) VALUES (?, 1, ?, ?, ?)',
          ...[day, part, '', 1 + Math.floor(3 * random() ** 3)],
        )
        rows += 1
      }
    }
  })
  database.close()
  return rows
}

/** Numbers from 0 to 1, the same every time: a linear congruential generator (Numerical Recipes, 1992). */
function seeded(seed: number): () => number {
  let state = seed
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0
    return state / 2 ** 32
  }
}
