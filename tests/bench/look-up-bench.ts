import Fuse from 'fuse.js'
import { findModels } from '../../electron/model-lookup/find-models.ts'
import { findOpenModels } from '../../electron/model-lookup/find-open-models.ts'
import { indexModels } from '../../electron/model-lookup/index-models.ts'
import type { ModelRow } from '../../electron/model-lookup/lay-out-models.ts'
import { type Damage, damageKey, damages } from '../builders/plate-damage.ts'
import { generateModels, seededChoice } from './generate-models.ts'
import { printTimings, timeEach, written } from './measure.ts'

/** How often the look-up finds the model behind a damaged number, how fast, and beside fuse.js over the same list. */
export async function run(): Promise<void> {
  for (const count of [10_000, 100_000]) await measure(count)
}

async function measure(count: number): Promise<void> {
  const models = generateModels(count)
  const brands = [...new Set(models.map(({ brand }) => brand))]
  const start = performance.now()
  const index = indexModels({ catalogueVersion: 1, brands, models, salesNames: [] })
  console.log(
    `${count} models: index built in ${written(performance.now() - start)} ms; wanted 400 at 100000`,
  )
  const queries = makeQueries(models)
  const find = ({ text }: Query) =>
    findModels({ index, readFacts }, { text, top: 10 }).candidates.map(({ key }) => key)
  const fuse = new Fuse(models, { keys: ['key'], includeScore: true, threshold: 0.5 })
  const fuseFind = ({ text }: Query) => fuse.search(text, { limit: 10 }).map(({ item }) => item.key)
  const few = queries.filter((_, at) => at % 23 === 0)
  const fuseTimings = await timeEach(few.slice(0, 20), fuseFind)
  const reference = `fuse.js in this run p50 ${written(fuseTimings.p50)}, p95 ${written(fuseTimings.p95)} ms`
  printTimings('find', await timeEach(queries, find), { reference })
  printRecall('find', queries, find)
  printRecall('find, the texts that fuse.js was asked', few.slice(0, 60), find)
  printRecall('fuse.js', few.slice(0, 60), fuseFind)
  printTimings(
    'what a beginning leaves open',
    await timeEach(beginnings(models), text => findOpenModels(index, { text })),
    {
      wanted: 'p95 20',
    },
  )
}

const readFacts = () => ({ salesNames: [], madeFrom: null, madeTo: null })

interface Query {
  readonly truth: string
  readonly kind: string
  readonly text: string
}

/** Fifteen ways in which a number reaches the counter: each damage alone, and the commonest together. */
function makeQueries(models: readonly ModelRow[]): Query[] {
  const choose = seededChoice(7)
  const pairs: readonly (readonly Damage[])[] = [
    ...damages.map(damage => [damage] as const),
    ['lookalike', 'lookalike'],
    ['missing suffix', 'lookalike'],
    ['missing suffix', 'wrong character'],
    ['swapped neighbours', 'missing suffix'],
  ]
  return Array.from({ length: 1500 }, (_, at) => {
    const truth = models[choose(models.length)]?.key ?? ''
    const kinds = pairs[at % pairs.length] ?? []
    const text = kinds.reduce((damaged, damage) => damageKey(damaged, damage, choose), truth)
    return { truth, kind: kinds.join(' and '), text }
  })
}

function beginnings(models: readonly ModelRow[]): string[] {
  return models
    .filter((_, at) => at % Math.floor(models.length / 200) === 0)
    .map(({ key }) => key.slice(0, 4))
}

function printRecall(
  what: string,
  queries: readonly Query[],
  find: (query: Query) => readonly string[],
): void {
  const places = queries.map(query => ({ kind: query.kind, place: find(query).indexOf(query.truth) }))
  const share = (list: typeof places, top: number) =>
    (list.filter(({ place }) => place >= 0 && place < top).length / list.length).toFixed(3)
  console.log(`${what}: recall@1 ${share(places, 1)}, recall@5 ${share(places, 5)} of ${places.length} texts`)
  if (queries.length < 500) return
  for (const kind of new Set(places.map(place => place.kind))) {
    const ofKind = places.filter(place => place.kind === kind)
    console.log(`  ${kind}: recall@1 ${share(ofKind, 1)}, recall@5 ${share(ofKind, 5)}`)
  }
}
