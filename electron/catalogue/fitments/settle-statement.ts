import type { WritableDatabase } from '../../database/handles.ts'
import type { RefusedRow } from '../loading/catalogue-file.ts'
import { contradicts, type Outcome } from '../loading/keyed-rows.ts'
import { RowFault } from '../loading/row-fault.ts'
import { deletePattern, insertPattern } from './fitment-pattern-queries.ts'
import { listModelsOfTerms } from './fitment-queries.ts'
import type { KnownStatements, Saying, Statement } from './known-statements.ts'
import type { TermsChange } from './write-fitments.ts'

/** The models that a listed number with wildcards means. */
export interface WideRow {
  readonly modelIds: readonly number[]
  readonly brandId: number
  readonly pattern: string
}

export interface SaidRow {
  readonly saying: Saying
  readonly line: number
  /** Which of the rows gathered from that line. */
  readonly nth: number
  readonly modelId: number
  /** Not null where the row means several models; then `modelId` means nothing. */
  readonly wide: WideRow | null
}

type WordFault = RefusedRow['word']

export interface SettledStatement {
  readonly changes: readonly TermsChange[]
  readonly counts: Readonly<Record<Outcome, number>>
  readonly refused: readonly RefusedRow[]
  /** Of which models the rows that were taken say what. */
  readonly stated: ReadonlyMap<Saying, Uint32Array>
}

/**
 * What the rows of one statement come to, in their order. In one run two sayings of a model are a contradiction, and
 * neither is guessed to be right; a later run replaces what an earlier one said.
 */
export function settleStatement(
  database: WritableDatabase,
  known: KnownStatements,
  { sayings }: Statement,
  rows: readonly SaidRow[],
): SettledStatement {
  const models = new Map(sayings.map(saying => [saying, readModels(database, saying)] as const))
  const counts = { added: 0, changed: 0, unchanged: 0 }
  const refused: RefusedRow[] = []
  for (const row of rows) {
    const word = findContradiction(models, row)
    if (word === undefined) counts[takeRow(database, known, models, row)] += 1
    else refused.push({ line: row.line, nth: row.nth, word })
  }
  return {
    changes: [...models].flatMap(([saying, ofSaying]) => asChange(saying, ofSaying)),
    counts,
    refused,
    stated: new Map([...models].map(([saying, { lines }]) => [saying, sorted(lines.keys())])),
  }
}

interface ModelsOfSaying {
  readonly before: ReadonlySet<number>
  readonly now: Set<number>
  /** The line of this run that said so last. */
  readonly lines: Map<number, number>
}

type ModelsBySaying = ReadonlyMap<Saying, ModelsOfSaying>

function readModels(database: WritableDatabase, { termsId }: Saying): ModelsOfSaying {
  const before = termsId === undefined ? [] : listModelsOfTerms(database, termsId)
  return { before: new Set(before), now: new Set(before), lines: new Map() }
}

function modelsOfRow({ wide, modelId }: SaidRow): readonly number[] {
  return wide === null ? [modelId] : wide.modelIds
}

function findContradiction(models: ModelsBySaying, row: SaidRow): WordFault | undefined {
  for (const [other, { lines }] of models) {
    if (other === row.saying || lines.size === 0) continue
    for (const modelId of modelsOfRow(row)) {
      const line = lines.get(modelId)
      if (line !== undefined) return wordContradiction(row.saying, other, line)
    }
  }
  return undefined
}

function wordContradiction(saying: Saying, other: Saying, line: number): WordFault {
  if (other.says === saying.says) return () => contradicts(line)
  return ({ source, family, part_number, brand, model_number }) => {
    const both = `${source} both includes and excludes ${family || part_number} for ${brand} ${model_number}`
    return new RowFault(
      'says',
      `contradicts line ${line}: ${both} on the same terms; keep the one that is right`,
    )
  }
}

/** Takes back what an earlier load said otherwise, whose terms stay for the history, and says this. */
function takeRow(
  database: WritableDatabase,
  known: KnownStatements,
  models: ModelsBySaying,
  row: SaidRow,
): Outcome {
  const { saying, line, wide } = row
  const termsId = known.termsOf(saying)
  let [replaced, added] = [0, 0]
  for (const [other, { now }] of models) {
    if (other === saying) continue
    for (const modelId of modelsOfRow(row)) replaced += Number(now.delete(modelId))
    if (wide !== null && other.termsId !== undefined)
      replaced += Number(deletePattern(database, { ...wide, termsId: other.termsId }))
  }
  const own = models.get(saying)
  if (own === undefined) throw new Error('a row is settled with the statement that it makes')
  for (const modelId of modelsOfRow(row)) {
    added += Number(!own.now.has(modelId))
    own.now.add(modelId)
    own.lines.set(modelId, line)
  }
  if (wide !== null) added += Number(insertPattern(database, { ...wide, termsId }))
  return replaced > 0 ? 'changed' : added > 0 ? 'added' : 'unchanged'
}

function asChange({ termsId }: Saying, { before, now }: ModelsOfSaying): TermsChange[] {
  const said = sorted([...now].filter(modelId => !before.has(modelId)))
  const withdrawn = sorted([...before].filter(modelId => !now.has(modelId)))
  if (termsId === undefined || said.length + withdrawn.length === 0) return []
  return [{ termsId, said, withdrawn }]
}

function sorted(ids: Iterable<number>): Uint32Array {
  return Uint32Array.from(ids).sort()
}
