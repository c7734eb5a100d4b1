import { readFileSync } from 'node:fs'
import path from 'node:path'
import { buildCase } from '../../electron/fault-guide/build-case.ts'
import { listSymptoms, readGuide } from '../../electron/fault-guide/guide-queries.ts'
import { learnPrior } from '../../electron/fault-guide/reasoning/learn-prior.ts'
import type { FaultCase } from '../../electron/fault-guide/reasoning/weigh-case.ts'
import { openTestCatalogue } from './open-test-catalogue.ts'

export interface SampleCase {
  readonly applianceType: string
  readonly symptom: string
  readonly faultCase: FaultCase
  /** The guide's own minutes of a check. */
  readonly minutesOf: (check: string) => number
}

/** Every symptom of the sample guide as the reasoning sees it in a shop without jobs, loaded by the real loader. */
export async function readSampleGuide(): Promise<SampleCase[]> {
  const { database, load } = openTestCatalogue()
  const report = await load(Object.fromEntries(files.map(file => [file, readSample(file)])))
  if (report.rejected.length > 0) throw new Error(`the sample guide has ${report.rejected.length} bad rows`)
  return listSymptoms(database, null).flatMap(({ applianceType, symptom }) => {
    const guide = readGuide(database, { applianceType, symptom })
    if (guide === undefined) return []
    const causes = guide.causes.map(({ cause, weight }) => ({ cause, weight, families: [] }))
    const minutes = new Map(guide.checks.map(check => [check.check, check.minutes]))
    return [
      {
        applianceType,
        symptom,
        faultCase: buildCase(guide, learnPrior(causes, [], null)),
        minutesOf: (check: string) => minutes.get(check) ?? Number.NaN,
      },
    ]
  })
}

const files = ['families.csv', 'faults.csv', 'fault_checks.csv', 'fault_outcomes.csv']

function readSample(file: string): string {
  return readFileSync(path.join(import.meta.dirname, '../../sample-catalogue', file), 'utf8')
}
