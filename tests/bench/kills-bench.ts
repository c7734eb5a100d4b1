import { spawnSync } from 'node:child_process'
import path from 'node:path'

const root = path.join(import.meta.dirname, '../..')
const runs = [
  { test: 'tests/electron/catalogue/killed-load.test.ts', kills: 200 },
  { test: 'tests/electron/stock-ledger/killed-ledger.test.ts', kills: 300 },
]

/** The tests that kill a program at random moments, with more moments than a test run has time for. */
export async function run(): Promise<void> {
  for (const { test, kills } of runs) {
    const { status } = spawnSync(
      process.execPath,
      ['node_modules/vitest/vitest.mjs', 'run', '--config', 'tests/vitest.config.ts', test],
      { cwd: root, stdio: 'inherit', env: { ...process.env, TALLYPLATE_KILLS: String(kills) } },
    )
    console.log(`${test}: killed ${kills} times, ${status === 0 ? 'held' : 'FAILED'}`)
    if (status !== 0) process.exitCode = 1
  }
}
