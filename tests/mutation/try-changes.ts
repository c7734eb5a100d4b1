import { spawnSync } from 'node:child_process'
import { existsSync, globSync, mkdirSync, readFileSync, renameSync, rmSync, statSync } from 'node:fs'
import path from 'node:path'
import { z } from 'zod'
import { type MutationReport, mutationReport } from './read-report.ts'

const root = path.join(import.meta.dirname, '../..')
const config = 'tests/mutation/stryker.config.json'
const kept = path.join(root, 'tests/bench/out/mutation')
const latest = path.join(kept, 'report.json')

/** The files whose rules are changed, by their paths in the project. */
export function listRuleFiles(): string[] {
  const { mutate } = z
    .object({ mutate: z.array(z.string()) })
    .parse(JSON.parse(readFileSync(path.join(root, config), 'utf8')))
  return mutate
}

/** What was found of a file's changes when all of them were last tried; undefined while they never were. */
export function readKept(file: string): MutationReport | undefined {
  const report = reportOf(file)
  return existsSync(report) ? mutationReport.parse(JSON.parse(readFileSync(report, 'utf8'))) : undefined
}

/** True when no rule and no test is younger than what was found. */
export function isUpToDate(file: string): boolean {
  const report = reportOf(file)
  if (!existsSync(report)) return false
  const found = statSync(report).mtimeMs
  return globSync(inputs, { cwd: root }).every(input => statSync(path.join(root, input)).mtimeMs <= found)
}

const inputs = [
  'electron/**/*.ts',
  'shared-schemas/**/*.ts',
  'tests/{builders,hosts,outside}/**/*.ts',
  'tests/electron/{fit-check,catalogue}/**/*.ts',
  'tests/mutation/{some-questions.test,vitest.config}.ts',
]

/**
 * Tries every change of one file. What was found before an interruption is kept, and so is what was found of text that
 * is the same since, as far as the tests that tried it are; false when the mutation tester stopped.
 */
export function tryChanges(file: string): boolean {
  mkdirSync(kept, { recursive: true })
  rmSync(latest, { force: true })
  const stryker = path.join(root, 'node_modules/@stryker-mutator/core/bin/stryker.js')
  const only = ['--mutate', file, '--incrementalFile', path.join(kept, `${nameOf(file)}.incremental.json`)]
  const { status } = spawnSync(process.execPath, [stryker, 'run', config, ...only], {
    cwd: root,
    stdio: 'inherit',
  })
  if (status !== 0 || !existsSync(latest)) return false
  renameSync(latest, reportOf(file))
  return true
}

function reportOf(file: string): string {
  return path.join(kept, `${nameOf(file)}.report.json`)
}

function nameOf(file: string): string {
  return path.basename(file, '.ts')
}
