import type { Cells, LoadRun, RefusedRow, StoredRows } from '../loading/catalogue-file.ts'
import { hasWildcard, matchModelPattern } from '../loading/match-model-pattern.ts'
import { RowFault } from '../loading/row-fault.ts'
import { deletePattern, listPatternsOfSources } from './fitment-pattern-queries.ts'
import { listModelsOfTerms } from './fitment-queries.ts'
import { type FitmentRow, fitmentRow } from './fitment-row.ts'
import { GatheredPairs, onceEach } from './gathered-pairs.ts'
import { groupByStatement } from './group-by-statement.ts'
import { KnownStatements, type Saying, type Statement, sourceOf } from './known-statements.ts'
import { type KnownRow, RepeatedRows } from './repeated-rows.ts'
import { RowLines } from './row-lines.ts'
import { type SaidRow, settleStatement, type WideRow } from './settle-statement.ts'
import type { TermsChange } from './write-fitments.ts'

/**
 * Takes the rows of a run, millions of them at eight bytes each, and stores them together at the end: sorted, each list
 * is written once. What a row says is settled only then, in the order of the rows.
 */
export class FitmentGatherer {
  readonly statements: KnownStatements
  /** What the row just taken came to; undefined where it was not sound, or means several models. */
  last: KnownRow | undefined
  readonly #run: LoadRun
  readonly #rows = new GatheredPairs()
  readonly #lines = new RowLines()
  readonly #repeated = new RepeatedRows(Object.keys(fitmentRow.shape))
  readonly #wideRows = new Map<number, WideRow>()
  readonly #sayingOfWideRow = new Map<number, Saying>()
  readonly #statementsOfWideRows = new Set<Statement>()
  /** Of each saying the models that the rows name; kept only for a new edition, which retires the others. */
  readonly #stated = new Map<Saying, Uint32Array[]>()

  constructor(run: LoadRun) {
    this.#run = run
    this.statements = new KnownStatements(run.database)
  }

  /** Takes a row whose model and all the rest were each in a sound row before; undefined for any other. */
  takeRepeated(cells: Cells, line: number): 'gathered' | undefined {
    this.last = this.#repeated.find(cells)
    if (this.last === undefined) return undefined
    this.add(this.last.modelId, this.last.saying, line)
    return 'gathered'
  }

  take(fitment: FitmentRow, line: number, cells: Cells): 'gathered' {
    this.last = undefined
    const modelIds = this.#listModels(fitment)
    const statement = this.statements.statementOf(this.#readSubject(fitment))
    const saying = this.statements.sayingOf(statement, fitment)
    if (!hasWildcard(fitment.model_number)) {
      const modelId = modelIds[0] as number
      this.add(modelId, saying, line)
      this.last = { saying, modelId }
      this.#repeated.remember(cells, this.last)
      return 'gathered'
    }
    const { brand, model_number: pattern } = fitment
    const wide = { modelIds, pattern, brandId: this.#run.known.brand(brand) }
    this.#wideRows.set(this.add(0, saying, line), wide)
    this.#statementsOfWideRows.add(statement)
    return 'gathered'
  }

  /** Adds a row that says this of one model, and gives its place among the rows. */
  add(modelId: number, saying: Pick<Saying, 'place'>, line: number): number {
    const place = this.#rows.add(modelId, saying.place)
    this.#lines.add(place, line)
    return place
  }

  /** Stores what was gathered; yields how far it has come. */
  *store(): Generator<number, StoredRows> {
    const { groups, isContested } = yield* this.#group()
    const refused: RefusedRow[] = []
    const counts = { added: 0, changed: 0, unchanged: 0 }
    const changes: (TermsChange & { readonly rows: number })[] = []
    for (const [statement, places] of groups) {
      if (isContested(statement)) {
        const settled = this.#settle(statement, places)
        for (const change of settled.changes) changes.push({ ...change, rows: 0 })
        refused.push(...settled.refused)
        for (const outcome of outcomes) counts[outcome] += settled.counts[outcome]
      } else {
        const [saying] = statement.sayings as [Saying]
        const said = onceEach(places)
        this.#keepStated(saying, said)
        const termsId = this.statements.termsOf(saying)
        changes.push({ termsId, said, withdrawn: noModels, rows: places.length })
      }
      yield 0
    }
    this.#rows.clear()
    changes.sort((one, other) => one.termsId - other.termsId)
    const written = yield* this.#run.fitments.write(changes)
    for (const [at, { rows }] of changes.entries()) {
      if (rows === 0) continue
      const added = written[at]?.said.length ?? 0
      counts.added += added
      counts.unchanged += rows - added
    }
    return { counts, refused }
  }

  /** Withdraws what the sources of the rows said before and no row says now, and counts it. */
  *retireUnsaid(): Generator<number, number> {
    const sources = new Set([...this.#stated.keys()].map(({ statement }) => sourceOf(statement)))
    const changes: TermsChange[] = []
    for (const saying of this.statements.sayings) {
      if (saying.termsId === undefined || !sources.has(sourceOf(saying.statement))) continue
      const stated = new Set((this.#stated.get(saying) ?? []).flatMap(models => [...models]))
      const unsaid = listModelsOfTerms(this.#run.database, saying.termsId).filter(id => !stated.has(id))
      if (unsaid.length > 0)
        changes.push({ termsId: saying.termsId, said: noModels, withdrawn: Uint32Array.from(unsaid) })
      yield 0
    }
    const written = yield* this.#run.fitments.write(changes)
    const models = written.reduce((sum, { withdrawn }) => sum + withdrawn.length, 0)
    return models + this.#retirePatterns(sources)
  }

  #retirePatterns(sources: ReadonlySet<number>): number {
    const written = new Set<string>()
    for (const [place, { brandId, pattern }] of this.#wideRows) {
      const saying = this.#sayingOfWideRow.get(place)
      if (saying?.termsId !== undefined) written.add(`${brandId} ${saying.termsId} ${pattern}`)
    }
    const unsaid = listPatternsOfSources(this.#run.database, [...sources]).filter(
      ({ brandId, termsId, pattern }) => !written.has(`${brandId} ${termsId} ${pattern}`),
    )
    for (const pattern of unsaid) deletePattern(this.#run.database, pattern)
    return unsaid.length
  }

  *#group() {
    const { sayings } = this.statements
    const isContested = (statement: Statement) =>
      statement.sayings.length > 1 || this.#statementsOfWideRows.has(statement)
    for (const place of this.#wideRows.keys())
      this.#sayingOfWideRow.set(place, sayings[this.#rows.groupAt(place)] as Saying)
    const groups = yield* groupByStatement(this.#rows, this.statements, isContested)
    return { groups, isContested }
  }

  #settle(statement: Statement, places: Uint32Array) {
    const rows = Array.from(places, (place): SaidRow => {
      const saying = this.statements.sayings[this.#rows.groupAt(place)] as Saying
      const wide = this.#wideRows.get(place) ?? null
      return { saying, ...this.#lines.lineOf(place), modelId: this.#rows.modelAt(place), wide }
    })
    const settled = settleStatement(this.#run.database, this.statements, statement, rows)
    for (const [saying, models] of settled.stated) this.#keepStated(saying, models)
    return settled
  }

  #keepStated(saying: Saying, models: Uint32Array): void {
    if (!this.#run.edition) return
    const known = this.#stated.get(saying)
    if (known === undefined) this.#stated.set(saying, [models])
    else known.push(models)
  }

  #listModels({ brand, model_number }: FitmentRow): readonly number[] {
    const { known } = this.#run
    if (!hasWildcard(model_number)) return [known.model(brand, model_number)]
    const matched = matchModelPattern(model_number, known.modelsOf(known.brand(brand)))
    if (matched.length > 0) return matched
    throw new RowFault(
      'model_number',
      `“${model_number}” matches no model of ${brand}: mend it, or load the models first`,
    )
  }

  #readSubject(fitment: FitmentRow): Statement['subject'] {
    const { known } = this.#run
    return [
      fitment.family === null ? null : known.family(fitment.family),
      fitment.part_number === null ? null : known.part(fitment.part_number),
      fitment.made_from,
      fitment.made_to,
      fitment.serial_from,
      fitment.serial_to,
      fitment.position,
      this.statements.sourceId(fitment.source),
    ]
  }
}

const outcomes = ['added', 'changed', 'unchanged'] as const
const noModels = new Uint32Array()
