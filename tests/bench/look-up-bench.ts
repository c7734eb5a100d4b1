import { execFileSync } from 'node:child_process'
import { mkdtempSync, rmSync, statSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import Fuse from 'fuse.js'
import { raiseCatalogueVersion } from '../../electron/catalogue/catalogue-state-queries.ts'
import { normaliseNumber } from '../../electron/catalogue/normalise-number.ts'
import { type DatabaseHandle, inTransaction } from '../../electron/database/handles.ts'
import { openDatabase } from '../../electron/database/open-database.ts'
import { currentModelIndex } from '../../electron/model-lookup/current-model-index.ts'
import { findOpenModels } from '../../electron/model-lookup/find-open-models.ts'
import { encodeKey } from '../../electron/model-lookup/fold-characters.ts'
import { modelLookupHandlers } from '../../electron/model-lookup/handlers.ts'
import { keepIndex } from '../../electron/model-lookup/keep-index.ts'
import type { ModelRow } from '../../electron/model-lookup/lay-out-models.ts'
import { rankLikelyKeys } from '../../electron/model-lookup/rank-keys.ts'
import { restrictedDistance } from '../builders/edit-distance.ts'
import { plateClasses } from '../builders/plate-classes.ts'
import { brands, generateModels, seededChoice } from './generate-models.ts'
import { printTimings, summarise, timeEach, written } from './measure.ts'

/**
 * How often the look-up finds the model behind a damaged number, how fast, how soon after opening and from how large an
 * index, beside fuse.js and SQLite's own trigram search over the same list. The classes of damage and the density of
 * the numbers are this bench's own.
 */
export async function run(): Promise<void> {
  for (const count of [100_000, 1_000_000]) await measure(count)
}

const wishes = {
  recall: '@1 0.85 (0.858), @5 0.975 (0.985)',
  speed: 'p50 0.6 (0.3), p95 1.5 (1.0) ms',
  firstAnswer: '200 (100) ms',
  size: '60 (36) MB',
}

async function measure(count: number): Promise<void> {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'tallyplate-bench-'))
  const file = path.join(folder, 'shop.sqlite')
  try {
    const models = generateModels(count)
    console.log(`\n${count} models`)
    const database = openDatabase(file)
    insertModels(database, models)
    keepAndMeasure(database, file)
    measureFirstAnswer(file)
    const queries = makeQueries(models)
    await measureFinding(database, models, queries)
    measureChanges(database)
    database.close()
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

function insertModels(database: DatabaseHandle, models: readonly ModelRow[]): void {
  inTransaction(database, writable => {
    brands.forEach((brand, at) => {
      writable.run('INSERT INTO brand VALUES (?, ?, ?)', at + 1, brand, normaliseNumber(brand))
    })
    for (const { modelId, brand, modelNumber, key, applianceType } of models)
      writable.run(
        'INSERT INTO model (model_id, brand_id, model_number, model_key, appliance_type) VALUES (?, ?, ?, ?, ?)',
        modelId,
        brands.indexOf(brand) + 1,
        modelNumber,
        key,
        applianceType,
      )
    raiseCatalogueVersion(writable)
  })
  database.connection.pragma('wal_checkpoint(TRUNCATE)')
}

function keepAndMeasure(database: DatabaseHandle, file: string): void {
  const before = statSync(file).size
  const start = performance.now()
  keepIndex(database)
  const took = performance.now() - start
  database.connection.pragma('wal_checkpoint(TRUNCATE)')
  const megabytes = (statSync(file).size - before) / 1e6
  console.log(`index laid out and kept: ${written(took)} ms, in a thread of its own in the program`)
  console.log(`index on disk: ${megabytes.toFixed(1)} MB; wanted ${wishes.size}`)
}

/** A program of its own each time, so that nothing is compiled or read yet but the modules. */
function measureFirstAnswer(file: string): void {
  const measured = Array.from({ length: 9 }, () => {
    const printed = execFileSync(process.execPath, [path.join(import.meta.dirname, 'first-answer.ts'), file])
    return String(printed).split(' ').map(Number)
  })
  const [clock, processor] = [0, 1].map(which => summarise(measured.map(took => took[which] ?? Number.NaN)))
  console.log(
    `first answer of a new program (file in the system's cache): p50 ${written(clock?.p50 ?? Number.NaN)} ms, of the processor ${written(processor?.p50 ?? Number.NaN)} ms; wanted ${wishes.firstAnswer}`,
  )
}

interface Query {
  readonly modelId: number
  readonly name: string
  readonly text: string
}

function makeQueries(models: readonly ModelRow[]): Query[] {
  const choose = seededChoice(7)
  return Array.from({ length: 2000 }, (_, at) => {
    const model = models[choose(models.length)] as ModelRow
    const { name, read } = plateClasses[at % plateClasses.length] as (typeof plateClasses)[number]
    return { modelId: model.modelId, name, text: read(model, choose) }
  })
}

type Find = (text: string) => readonly number[]

async function measureFinding(
  database: DatabaseHandle,
  models: readonly ModelRow[],
  queries: readonly Query[],
): Promise<void> {
  const handlers = modelLookupHandlers({ database })
  const find: Find = text => {
    const found = handlers['model-lookup.find-models']({ text, top: 5 }, { report: () => {} })
    if (found instanceof Promise) throw new Error('the look-up answers at once')
    return found.candidates.map(({ modelId }) => modelId)
  }
  const few = queries.filter((_, at) => at % 67 === 0)
  const own = await timeQuickest(queries, find)
  printTimings('find, all 2,000 texts', own.once, { wanted: wishes.speed })
  printTimings('find, the quickest of five times of each text (others use this machine too)', own.quickest)
  console.log(`find, of the processor: ${own.processor.toFixed(2)} ms a text`)
  const fuse = new Fuse(models, { keys: ['key'], includeScore: true, threshold: 0.5 })
  const fuseFind: Find = text =>
    fuse.search(normaliseNumber(text), { limit: 5 }).map(({ item }) => item.modelId)
  const sqliteFind = findBySqlite(database, models)
  printTimings('fuse.js, 10 of the texts', await timeEach(few.slice(0, 10), ({ text }) => fuseFind(text)))
  const some = queries.filter((_, at) => at % 11 === 0)
  printTimings(
    `FTS5 trigrams and re-rank, ${some.length} of the texts`,
    await timeEach(some, ({ text }) => sqliteFind(text)),
  )
  printTimings(
    'what the beginning of a number leaves open',
    await timeEach(beginnings(models), text => findOpenModels(currentModelIndex(database), { text })),
    { wanted: 'p95 20 ms' },
  )
  printRecall(database, queries, find)
  for (const [name, other] of [['fuse.js', fuseFind] as const, ['FTS5 and re-rank', sqliteFind] as const]) {
    const asked = name === 'fuse.js' ? few.slice(0, 10) : some
    console.log(`${name}: ${recallOf(asked, other)}; find, the same texts: ${recallOf(asked, find)}`)
  }
}

/** Each text once for warming up, then five times. */
async function timeQuickest(queries: readonly Query[], find: Find) {
  await timeEach(queries, ({ text }) => find(text))
  const usedBefore = process.cpuUsage()
  const times = Array.from({ length: 5 }, () =>
    queries.map(({ text }) => {
      const start = performance.now()
      find(text)
      return performance.now() - start
    }),
  )
  const { user, system } = process.cpuUsage(usedBefore)
  const quickest = queries.map((_, at) => Math.min(...times.map(took => took[at] ?? Infinity)))
  return {
    once: summarise(times[0] ?? []),
    quickest: summarise(quickest),
    processor: (user + system) / 1000 / (times.length * queries.length),
  }
}

/** What SQLite brings: the keys that share most trigrams by its own measure, put in order by plain edit distance. */
function findBySqlite({ connection }: DatabaseHandle, models: readonly ModelRow[]): Find {
  connection.exec(
    "CREATE VIRTUAL TABLE temp.number_search USING fts5(number, tokenize = 'trigram', detail = none)",
  )
  const insert = connection.prepare('INSERT INTO temp.number_search (rowid, number) VALUES (?, ?)')
  connection.transaction(() => {
    for (const { modelId, key } of models) insert.run(modelId, key)
  })()
  const search = connection.prepare<[string], { rowid: number; number: string }>(
    'SELECT rowid, number FROM temp.number_search WHERE number_search MATCH ? ORDER BY rank LIMIT 200',
  )
  return text => {
    const key = normaliseNumber(text)
    const trigrams = Array.from(
      { length: Math.max(0, key.length - 2) },
      (_, at) => `"${key.slice(at, at + 3)}"`,
    )
    if (trigrams.length === 0) return []
    const ranked = search
      .all([...new Set(trigrams)].join(' OR '))
      .map(({ rowid, number }) => ({ rowid, distance: restrictedDistance(key, number) }))
    return ranked
      .sort((one, other) => one.distance - other.distance)
      .slice(0, 5)
      .map(({ rowid }) => rowid)
  }
}

function beginnings(models: readonly ModelRow[]): string[] {
  return models
    .filter((_, at) => at % Math.floor(models.length / 200) === 0)
    .map(({ key }) => key.slice(0, 4))
}

/**
 * Beside what was found, what chance allows: where the model and others cost the same, no ranking can do better than
 * put them in a random order.
 */
function printRecall(database: DatabaseHandle, queries: readonly Query[], find: Find): void {
  const judged = queries.map(query => ({
    name: query.name,
    place: find(query.text).indexOf(query.modelId),
    ...chanceOf(database, query),
  }))
  const line = (list: typeof judged) => {
    const share = (of: (one: (typeof judged)[number]) => number) =>
      (list.reduce((sum, one) => sum + of(one), 0) / list.length).toFixed(3)
    const within = (top: number) => share(({ place }) => (place >= 0 && place < top ? 1 : 0))
    return `recall@1 ${within(1)}, @5 ${within(5)}; random order of equals ${share(one => one.first)}, ${share(one => one.firstFive)}`
  }
  console.log(`find: ${line(judged)}; wanted ${wishes.recall}`)
  for (const { name } of plateClasses)
    console.log(`  ${name}: ${line(judged.filter(one => one.name === name))}`)
}

function chanceOf(database: DatabaseHandle, { modelId, text }: Query) {
  const index = currentModelIndex(database)
  const [layer] = index.layers
  const { key } = findOpenModels(index, { text })
  const { ranked } = rankLikelyKeys(index.numbers, encodeKey(index.numbers.alphabet, key), {
    wanted: 5,
    margin: 0,
    dearest: 54,
    isThorough: true,
    surcharge: () => 0,
    countOf: () => 1,
  })
  const cost = ranked.find(({ position }) => layer?.modelIds[position] === modelId)?.cost
  if (cost === undefined) return { first: 0, firstFive: 0 }
  const cheaper = ranked.filter(one => one.cost < cost).length
  const equals = ranked.filter(one => one.cost === cost).length
  const chance = (top: number) => Math.max(0, Math.min(1, (top - cheaper) / equals))
  return { first: chance(1), firstFive: chance(5) }
}

function recallOf(queries: readonly Query[], find: Find): string {
  const places = queries.map(({ modelId, text }) => find(text).indexOf(modelId))
  const share = (top: number) =>
    (places.filter(place => place >= 0 && place < top).length / places.length).toFixed(3)
  return `recall@1 ${share(1)}, @5 ${share(5)} of ${places.length} texts`
}

/** The first answer after a load that changed a few models: they are read beside the kept index. */
function measureChanges(database: DatabaseHandle): void {
  for (const count of [20, 2000]) {
    inTransaction(database, writable => {
      writable.run("UPDATE model SET appliance_type = 'hob' WHERE model_id <= ?", count)
      raiseCatalogueVersion(writable)
    })
    const start = performance.now()
    const { outcome } = findOpenModels(currentModelIndex(database), { text: 'AEC4044/01' })
    console.log(
      `first answer after ${count} models changed: ${written(performance.now() - start)} ms (${outcome}), nothing laid out anew`,
    )
  }
}
