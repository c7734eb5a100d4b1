import { mkdtempSync, rmSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { decideFit } from '../../electron/fit-check/decide-fit.ts'
import type { ModelFacts, PartDossier } from '../../electron/fit-check/part-dossier.ts'
import { asReadings } from '../../electron/fit-check/read-question.ts'
import { aDossier, aModel, aPart, aReplacement, aStatement } from '../builders/fit-dossier.ts'
import { printTimings, timeEach } from './measure.ts'
import { openBenchShop } from './open-bench-shop.ts'

/** A verdict over 5,000 open models, easy and hard, and what fits over the models that parts of numbers of the sample leave open. */
export async function run(): Promise<void> {
  const models = makeOpenModels(5000)
  printTimings('5,000 open models, one character decides', await timeDecisions(oneListing, models), {
    wanted: '50 ms',
  })
  printTimings(
    '5,000 open models, four conditions on dates and serials',
    await timeDecisions(fourConditions, models),
    {
      wanted: '50 ms',
    },
  )
  await measureLists()
}

function timeDecisions(dossier: PartDossier, models: readonly ModelFacts[]) {
  return timeEach(Array.from({ length: 20 }), () => decideFit(dossier, models, asReadings({})))
}

/** Listed for all but those with a 4 as the sixth character. */
const oneListing = aDossier({ statements: [aStatement(1)] })

const fourConditions = aDossier({
  parts: [aPart(1), aPart(2)],
  replacements: [aReplacement(1, 2, { made: { from: '2014-06' } })],
  statements: [
    aStatement(1),
    aStatement(2, { part: 1, made: { to: '2014-05' } }),
    aStatement(3, { says: 'excludes', made: { from: '2016' } }),
    aStatement(4, { serial: { from: '4000', to: '4999' } }),
  ],
})

function makeOpenModels(count: number): ModelFacts[] {
  return Array.from({ length: count }, (_, at) => {
    const key = `WX${1000 + at}${'ABCDEFGHJK'[at % 10]}${at % 7}`
    const others = [2, 3, 4].filter(terms => at % (terms + 3) !== 0)
    return aModel(key, {
      modelId: at + 1,
      terms: key[5] === '4' ? others : [1, ...others],
      made: at % 3 === 0 ? { from: '2012', to: '2015' } : {},
    })
  })
}

async function measureLists(): Promise<void> {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'tallyplate-bench-'))
  const shop = await openBenchShop(path.join(folder, 'shop.sqlite'))
  try {
    const summary = await shop.ask('catalogue.read-summary', {})
    if (summary.ok) console.log(`the sample holds ${JSON.stringify(summary.value, countsOnly)}`)
    for (const model of ['ODW4512/01', 'ODW4530', 'ODW45', 'ODW4']) {
      const found = await shop.ask('fit-check.list-fitting-parts', { model })
      const open = found.ok ? (found.value as { readonly models: number }).models : 0
      const timings = await timeEach([1, 2, 3, 4], () => shop.ask('fit-check.list-fitting-parts', { model }))
      printTimings(`what fits, ${open} open models (${model})`, timings)
    }
  } finally {
    shop.close()
    rmSync(folder, { recursive: true, force: true })
  }
}

function countsOnly(_key: string, value: unknown): unknown {
  return Array.isArray(value) ? value.length : value
}
