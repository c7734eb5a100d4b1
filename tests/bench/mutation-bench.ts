import { spawnSync } from 'node:child_process'
import { readFileSync, rmSync } from 'node:fs'
import path from 'node:path'
import { explainedSurvivors } from '../mutation/explained-survivors.ts'
import {
  explain,
  type FileScore,
  listSurvivors,
  mutationReport,
  scoreFiles,
  scorePercent,
} from '../mutation/read-report.ts'

const root = path.join(import.meta.dirname, '../..')
const reportFile = path.join(import.meta.dirname, 'out/mutation/report.json')

/**
 * Changes the rules of the fit check and of dates one by one, and counts which changes the tests notice. What was
 * found before and is unchanged is kept in `out/mutation/`; remove it to begin anew.
 */
export async function run(): Promise<void> {
  rmSync(reportFile, { force: true })
  const start = performance.now()
  const stryker = path.join(root, 'node_modules/@stryker-mutator/core/bin/stryker.js')
  const { status } = spawnSync(process.execPath, [stryker, 'run', 'tests/mutation/stryker.config.json'], {
    cwd: root,
    stdio: 'inherit',
  })
  if (status !== 0) throw new Error('The mutation tester stopped. What it said stands above.')
  const minutes = (performance.now() - start) / 60_000

  const report = mutationReport.parse(JSON.parse(readFileSync(reportFile, 'utf8')))
  const scores = scoreFiles(report)
  console.log('  score  killed  timeout  survived  not covered  left out  file')
  for (const score of scores) console.log(wordScore(score))
  console.log(
    `${scorePercent(scores).toFixed(1)} % noticed (wanted at least 90) in ${minutes.toFixed(0)} min`,
  )
  console.log('Left out: changes of what is set once when a file is loaded.')

  for (const survivor of listSurvivors(report)) {
    const why = explain(survivor, explainedSurvivors) ?? 'NOT EXPLAINED'
    console.log(`${survivor.file}:${survivor.line}  ${survivor.original}  →  ${survivor.becomes}\n    ${why}`)
  }
}

function wordScore(score: FileScore): string {
  const { killed, timedOut, survived, notCovered, leftOut, file } = score
  const cells = [scorePercent([score]).toFixed(1), killed, timedOut, survived, notCovered, leftOut]
  const widths = [7, 8, 9, 10, 13, 10]
  return `${cells.map((cell, at) => String(cell).padStart(widths[at] ?? 0)).join('')}  ${file}`
}
