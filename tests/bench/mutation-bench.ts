import { explainedSurvivors } from '../mutation/explained-survivors.ts'
import {
  explain,
  type FileScore,
  listSurvivors,
  type Survivor,
  scoreFiles,
  scorePercent,
} from '../mutation/read-report.ts'
import { isUpToDate, listRuleFiles, readKept, tryChanges } from '../mutation/try-changes.ts'

/**
 * Changes the rules of the fit check and of dates one by one, and counts which changes the tests notice. Goes file by
 * file, or tries those alone whose name holds a word of the command line; what was found is kept in `out/mutation/`, so
 * a run that was interrupted goes on where it stopped. Remove that folder to begin anew.
 */
export async function run(): Promise<void> {
  const files = listRuleFiles()
  const named = files.filter(file => process.argv.slice(2).some(word => file.includes(word)))
  const start = performance.now()
  const stopped = (named.length > 0 ? named : files).filter(file => !isUpToDate(file) && !tryChanges(file))
  const minutes = (performance.now() - start) / 60_000

  const reports = files.map(file => ({ file, report: readKept(file) }))
  const found = reports.flatMap(({ report }) => report ?? [])
  const survivors = found.flatMap(listSurvivors)
  const scores = found.flatMap(scoreFiles)
  console.log('  score  killed  timeout  survived  not covered  not explained  left out  file')
  for (const score of scores) console.log(wordScore(score, survivors))
  const total = totalOf(scores)
  console.log(wordScore(total, survivors))
  console.log(
    `${scorePercent(scores).toFixed(1)} % noticed (wanted at least 90); ${minutes.toFixed(0)} min in this run`,
  )
  const untried = reports.filter(({ report }) => report === undefined).map(({ file }) => file)
  if (untried.length > 0) console.log(`Not tried to the end, and not counted: ${untried.join(', ')}`)
  if (total.leftOut > 0) console.log('Left out: changes of what is set once when a file is loaded.')

  for (const survivor of survivors) {
    const why = explain(survivor, explainedSurvivors) ?? 'NOT EXPLAINED'
    console.log(`${survivor.file}:${survivor.line}  ${survivor.original}  →  ${survivor.becomes}\n    ${why}`)
  }
  if (stopped.length > 0)
    throw new Error(`The mutation tester stopped in ${stopped.join(', ')}. What it said stands above.`)
}

function totalOf(scores: readonly FileScore[]): FileScore {
  const add = (numberOf: (score: FileScore) => number) =>
    scores.reduce((sum, score) => sum + numberOf(score), 0)
  return {
    file: 'all together',
    killed: add(({ killed }) => killed),
    timedOut: add(({ timedOut }) => timedOut),
    survived: add(({ survived }) => survived),
    notCovered: add(({ notCovered }) => notCovered),
    leftOut: add(({ leftOut }) => leftOut),
  }
}

function wordScore(score: FileScore, survivors: readonly Survivor[]): string {
  const { killed, timedOut, survived, notCovered, leftOut, file } = score
  const unexplained = survivors.filter(
    one => (one.file === file || file === 'all together') && explain(one, explainedSurvivors) === undefined,
  )
  const cells = [
    scorePercent([score]).toFixed(1),
    ...[killed, timedOut, survived, notCovered, unexplained.length, leftOut],
  ]
  const widths = [7, 8, 9, 10, 13, 15, 10]
  return `${cells.map((cell, at) => String(cell).padStart(widths[at] ?? 0)).join('')}  ${file}`
}
