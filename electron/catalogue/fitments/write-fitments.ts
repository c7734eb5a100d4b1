import type { WritableDatabase } from '../../database/handles.ts'
import { appendChanges } from './fitment-change-queries.ts'
import { isAnythingSaid, listTermsOfModel } from './fitment-queries.ts'
import { encodeIds } from './id-lists.ts'
import { mergeIntoTerms } from './merge-into-terms.ts'

/** Of which models these terms are to be said, and of which no longer: both ascending, each model once, none in both. */
export interface TermsChange {
  readonly termsId: number
  readonly said: Uint32Array
  readonly withdrawn: Uint32Array
}

/**
 * Writes the changes into both directions, and keeps them under the run where one is named. Yields now and then how many
 * steps are done, two for each pair, so that others may be answered between; gives what was really new, in the same order.
 */
export function* writeFitments(
  database: WritableDatabase,
  changes: readonly TermsChange[],
  loadRunId: number | null,
): Generator<number, TermsChange[]> {
  const isFresh = !isAnythingSaid(database)
  const written: TermsChange[] = []
  let done = 0
  for (const change of changes) {
    const { said, withdrawn } = change
    for (const ids of [said, withdrawn, [change.termsId]]) assertIdsBelow(mostIds, ids)
    written.push(mergeIntoTerms(database, change, isFresh))
    done += said.length + withdrawn.length
    yield done
  }
  for (const pairs of sortByModel(written)) {
    writePairs(database, pairs, { loadRunId, isFresh })
    done += pairs.length
    yield done
  }
  return written
}

/** A model, terms and whether they are said make one number below 2^53. */
const mostIds = 0x4000000

function assertIdsBelow(most: number, ids: ArrayLike<number>): void {
  const last = ids[ids.length - 1] ?? 0
  if (last >= most) throw new Error(`an id of a model or of terms is below ${most}, but ${last} is not`)
}

/**
 * All pairs by model, then terms, a stretch of models at a time: of each list only the next few ids are looked at, so
 * that neither the pairs of all stand in memory at once, nor sorting them holds up whoever waits.
 */
function* sortByModel(changes: readonly TermsChange[]): Generator<Float64Array> {
  const lists = changes
    .flatMap(({ termsId, said, withdrawn }) => [
      { termsId, models: said, flag: 0 },
      { termsId, models: withdrawn, flag: 1 },
    ])
    .filter(({ models }) => models.length > 0)
  const next = new Uint32Array(lists.length)
  const stretches = yield* cutIntoStretches(lists)
  // One for all stretches: whoever is given a stretch is done with it before the next.
  const pairs = new Float64Array(stretches.reduce((most, { count }) => Math.max(most, count), 0))
  for (const { until } of stretches) {
    let place = 0
    for (let list = 0; list < lists.length; list += 1) {
      const { termsId, models, flag } = lists[list] as List
      let at = next[list] as number
      while (at < models.length && (models[at] as number) < until) {
        pairs[place] = ((models[at] as number) * mostIds + termsId) * 2 + flag
        place += 1
        at += 1
      }
      next[list] = at
    }
    yield pairs.subarray(0, place).sort()
  }
}

interface List {
  readonly termsId: number
  readonly models: Uint32Array
  /** 0 where it is said, 1 where it is withdrawn. */
  readonly flag: number
}

interface Stretch {
  /** The models below this that are in no stretch before. */
  readonly until: number
  /** How many pairs they have. */
  readonly count: number
}

const pairsOfStretch = 150_000
const blockBits = 8
const noPairs = new Float64Array()

/** Stretches of models that have some hundred thousand pairs each; they end where a block of models does. */
function* cutIntoStretches(lists: readonly List[]): Generator<Float64Array, Stretch[]> {
  const highest = lists.reduce((most, { models }) => Math.max(most, models.at(-1) ?? 0), 0)
  const ofBlock = new Uint32Array((highest >>> blockBits) + 1)
  for (const [at, { models }] of lists.entries()) {
    for (const model of models) ofBlock[model >>> blockBits] = (ofBlock[model >>> blockBits] as number) + 1
    if (at % 1000 === 0) yield noPairs
  }
  const stretches: Stretch[] = []
  let count = 0
  for (const [block, pairs] of ofBlock.entries()) {
    count += pairs
    const isLast = block + 1 === ofBlock.length
    if (count < pairsOfStretch && !isLast) continue
    stretches.push({ until: (block + 1) << blockBits, count })
    count = 0
  }
  return stretches
}

interface Writing {
  readonly loadRunId: number | null
  /** Whether nothing was said before, so that nothing need be read. */
  readonly isFresh: boolean
}

function writePairs(database: WritableDatabase, pairs: Float64Array, { loadRunId, isFresh }: Writing): void {
  let [said, withdrawn]: [number[], number[]] = [[], []]
  for (let at = 0; at < pairs.length; at += 1) {
    const pair = pairs[at] as number
    const flag = pair % 2
    const rest = (pair - flag) / 2
    const termsId = rest % mostIds
    const modelId = (rest - termsId) / mostIds
    if (flag === 0) said.push(termsId)
    else withdrawn.push(termsId)
    const next = pairs[at + 1]
    if (next !== undefined && next < (modelId + 1) * mostIds * 2) continue
    writeModel(database, modelId, { said, withdrawn, isFresh })
    if (loadRunId !== null) appendChanges(database, { modelId, loadRunId, said, withdrawn })
    ;[said, withdrawn] = [[], []]
  }
}

function writeModel(
  database: WritableDatabase,
  modelId: number,
  change: { readonly said: number[]; readonly withdrawn: readonly number[]; readonly isFresh: boolean },
): void {
  const { said, withdrawn, isFresh } = change
  const before = isFresh ? [] : listTermsOfModel(database, modelId)
  if (before.length === 0) {
    database.run('INSERT INTO fitment_by_model (model_id, terms) VALUES (?, ?)', modelId, encodeIds(said))
    return
  }
  const gone = new Set(withdrawn)
  const after = [...before.filter(termsId => !gone.has(termsId)), ...said].sort((one, other) => one - other)
  if (after.length === 0) database.run('DELETE FROM fitment_by_model WHERE model_id = ?', modelId)
  else database.run('UPDATE fitment_by_model SET terms = ? WHERE model_id = ?', encodeIds(after), modelId)
}
