import { findFaults } from '../electron/fit-check/soundness/find-faults.ts'

/** Two million generated questions, none of which the tests ask, judged by the program and by the naive reading of its rules. */
export async function run(): Promise<void> {
  const questions = 2_000_000
  const start = performance.now()
  const faults = findFaults({ first: 10_000_000, step: 1, questions })
  const seconds = (performance.now() - start) / 1000
  console.log(`${questions} questions in ${seconds.toFixed(0)} s; faults: ${faults.length} (wanted 0)`)
  for (const fault of faults) console.log(fault)
}
