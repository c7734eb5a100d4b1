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
 * All pairs by model, then terms, some thousand models at a time. They are dealt out by model first, because sorting all
 * at once would hold up whoever waits.
 */
function* sortByModel(changes: readonly TermsChange[]): Generator<Float64Array> {
  const starts = countByBlock(changes)
  const pairs = new Float64Array(starts[starts.length - 1] as number)
  const places = starts.slice()
  for (const { termsId, said, withdrawn } of changes) {
    for (const [models, flag] of [[said, 0] as const, [withdrawn, 1] as const])
      for (let at = 0; at < models.length; at += 1) {
        const model = models[at] as number
        const block = model >>> blockBits
        const place = places[block] as number
        pairs[place] = (model * mostIds + termsId) * 2 + flag
        places[block] = place + 1
      }
    yield noPairs
  }
  for (let block = 0; block + 1 < starts.length; block += 1) {
    const ofBlock = pairs.subarray(starts[block], starts[block + 1])
    if (ofBlock.length > 0) yield ofBlock.sort()
  }
}

const blockBits = 10
const noPairs = new Float64Array()

/** Where the pairs of each block of models begin, and where the last ends. */
function countByBlock(changes: readonly TermsChange[]): Uint32Array {
  let highest = 0
  for (const { said, withdrawn } of changes)
    highest = Math.max(highest, said.at(-1) ?? 0, withdrawn.at(-1) ?? 0)
  const starts = new Uint32Array((highest >>> blockBits) + 2)
  for (const { said, withdrawn } of changes)
    for (const models of [said, withdrawn])
      for (let at = 0; at < models.length; at += 1) {
        const after = ((models[at] as number) >>> blockBits) + 1
        starts[after] = (starts[after] as number) + 1
      }
  for (let block = 1; block < starts.length; block += 1)
    starts[block] = (starts[block] as number) + (starts[block - 1] as number)
  return starts
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
