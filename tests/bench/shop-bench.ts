import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import Fuse from 'fuse.js'
import Papa from 'papaparse'
import type { Application } from '../../electron/application.ts'
import { awkwardCases } from '../../sample-catalogue/awkward-cases.ts'
import { printTimings, timeEach, written } from './measure.ts'
import { openBenchShop, sampleFolder } from './open-bench-shop.ts'

/** The sample shop through the engine's door: loading, opening again, look-up beside fuse.js, fit, parts, reverse list. */
export async function run(): Promise<void> {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'tallyplate-bench-'))
  const databaseFile = path.join(folder, 'shop.tallyplate')
  try {
    await measureOpening(databaseFile, 'first opening, the sample loaded', 10_000)
    await measureOpening(databaseFile, 'opening again', 1000)
    const shop = await openBenchShop(databaseFile)
    await measureQuestions(shop)
    shop.close()
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

async function measureOpening(databaseFile: string, what: string, wanted: number): Promise<void> {
  const start = performance.now()
  const shop = await openBenchShop(databaseFile)
  await ask(shop, 'model-lookup.find-models', { text: awkwardQuestions[0]?.model ?? '' })
  console.log(`${what}, to the first answer: ${written(performance.now() - start)} ms; wanted ${wanted} ms`)
  shop.close()
}

async function measureQuestions(shop: Application): Promise<void> {
  const typed = awkwardQuestions.flatMap(({ model, brand }) => [
    { text: model },
    { text: model.slice(0, -1) },
    { text: `${model.slice(0, 3)}${model.slice(4)}` },
    ...(brand === undefined ? [] : [{ text: `MODEL NO. ${model} ${brand} 230V 50Hz` }]),
  ])
  const found = await timeEach(typed, input => ask(shop, 'model-lookup.find-models', input))
  const fuse = await timeFuse(typed.slice(0, 40))
  printTimings('find', found, {
    wanted: 'p95 2 ms',
    reference: `fuse.js over the same numbers p95 ${written(fuse.p95)} ms`,
  })

  const judge = () =>
    timeEach(awkwardQuestions, ({ brand, model, part, made, serial, volts, hertz }) =>
      ask(shop, 'fit-check.judge-fit', { model, part, brand, made, serial, volts, hertz }),
    )
  printTimings('fit, each question for the second time', await judge(), { wanted: 'p95 1 ms' })
  await judge()
  printTimings('fit, each question for the sixth time', await judge(), { wanted: 'p95 1 ms' })
  const parts = await timeEach(awkwardQuestions, ({ brand, model }) =>
    ask(shop, 'fit-check.list-fitting-parts', { model, brand }),
  )
  printTimings('parts of a model', parts)
  const models = await timeEach(awkwardQuestions.slice(0, 20), ({ part }) =>
    ask(shop, 'fit-check.list-fitted-models', { part }),
  )
  printTimings('models of a part', models)
}

const awkwardQuestions = awkwardCases.flatMap(({ questions }) => questions)

/** Every model number of the sample, searched by the general-purpose library that names and words are searched with. */
function timeFuse(typed: readonly { readonly text: string }[]) {
  const models = Papa.parse<{ model_number: string }>(
    readFileSync(path.join(sampleFolder, 'models.csv'), 'utf8'),
    {
      header: true,
      skipEmptyLines: true,
    },
  )
  const fuse = new Fuse(models.data.map(row => row.model_number))
  return timeEach(typed, ({ text }) => fuse.search(text, { limit: 10 }))
}

/** A refusal is an answer too here: only a defect stops the bench. */
async function ask(shop: Application, name: string, input: object): Promise<unknown> {
  const reply = await shop.ask(name, input)
  if (!reply.ok && ['unexpected', 'malformed'].includes(reply.problem.code))
    throw new Error(`${name} ${JSON.stringify(input)}: ${JSON.stringify(reply.problem)}`)
  return reply
}
