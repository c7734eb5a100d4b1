import { z } from 'zod'
import type { WritableDatabase } from '../../database/handles.ts'
import { defineFile, type LoadRun } from '../loading/catalogue-file.ts'
import { countOrUnknown, dateOrUnknown, oneOf, word, wordOrUnknown } from '../loading/cells.ts'
import { contradicts, type Outcome } from '../loading/keyed-rows.ts'
import { hasWildcard, matchModelPattern } from '../loading/match-model-pattern.ts'
import { checkRanges } from '../loading/ranges.ts'
import { RowFault } from '../loading/row-fault.ts'
import { checkOneSubject } from '../loading/subject.ts'

const row = z
  .object({
    says: oneOf('includes', 'excludes'),
    family: wordOrUnknown,
    part_number: wordOrUnknown,
    brand: word,
    model_number: word,
    made_from: dateOrUnknown,
    made_to: dateOrUnknown,
    serial_from: wordOrUnknown,
    serial_to: wordOrUnknown,
    position: wordOrUnknown,
    quantity: countOrUnknown(1),
    source: word,
  })
  .superRefine(checkOneSubject)
  .superRefine(checkRanges)

type FitmentRow = z.output<typeof row>

/** Everything that makes two rows speak of the same thing, apart from the model. */
interface Statement {
  readonly subject: readonly (string | number | null)[]
  readonly terms: Terms[]
}

/** One thing that is said of it. */
interface Terms {
  readonly termsId: number
  readonly says: 'includes' | 'excludes'
  readonly quantity: number | null
}

/**
 * A statement is its subject, conditions, position and source; of a model it says one thing. In one run two sayings
 * are a contradiction, and neither is guessed to be right; a later run replaces what an earlier one said.
 */
export const fitmentsFile = defineFile({
  name: 'fitments.csv',
  row,
  neededColumns: ['says', 'brand', 'model_number', 'source'],
  open: run => {
    const fitments = new Fitments(run)
    return { take: (fitment, line) => fitments.take(fitment, line) }
  },
})

class Fitments {
  readonly #run: LoadRun
  readonly #database: WritableDatabase
  readonly #sources: Map<string, number>
  readonly #statements = new Map<string, Statement>()
  /** The line of this run that said these terms of this model. */
  readonly #lines = new Map<number, number>()

  constructor(run: LoadRun) {
    this.#run = run
    this.#database = run.database
    this.#sources = new Map(run.database.tuples<[string, number]>('SELECT name, source_id FROM source'))
    const stored = run.database.tuples<[number, Terms['says'], number | null, ...Statement['subject']]>(
      `SELECT terms_id, says, quantity, family_id, part_id, made_from, made_to, serial_from, serial_to, position, source_id
       FROM fitment_terms`,
    )
    for (const [termsId, says, quantity, ...subject] of stored)
      this.#statementOf(subject).terms.push({ termsId, says, quantity })
  }

  take(fitment: FitmentRow, line: number): Outcome {
    const modelIds = this.#listModels(fitment)
    const statement = this.#statementOf(this.#readSubject(fitment))
    const isSame = (terms: Terms) => terms.says === fitment.says && terms.quantity === fitment.quantity
    const others = statement.terms.filter(terms => !isSame(terms))
    for (const other of others) this.#refuseContradiction(fitment, modelIds, other)
    const terms = statement.terms.find(isSame) ?? this.#addTerms(statement, fitment)
    const [replaced, added] = [this.#remove(fitment, modelIds, others), this.#add(fitment, modelIds, terms)]
    for (const modelId of modelIds) this.#lines.set(pairKey(modelId, terms), line)
    return replaced > 0 ? 'changed' : added > 0 ? 'added' : 'unchanged'
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
      this.#sourceId(fitment.source),
    ]
  }

  #statementOf(subject: Statement['subject']): Statement {
    const key = subject.join('\u001f')
    let statement = this.#statements.get(key)
    if (statement === undefined) {
      statement = { subject, terms: [] }
      this.#statements.set(key, statement)
    }
    return statement
  }

  #refuseContradiction(fitment: FitmentRow, modelIds: readonly number[], other: Terms): void {
    for (const modelId of modelIds) {
      const line = this.#lines.get(pairKey(modelId, other))
      if (line === undefined) continue
      if (other.says === fitment.says) throw contradicts(line)
      const { source, family, part_number, brand, model_number } = fitment
      const both = `${source} both includes and excludes ${family ?? part_number} for ${brand} ${model_number}`
      throw new RowFault(
        'says',
        `contradicts line ${line}: ${both} on the same terms; keep the one that is right`,
      )
    }
  }

  #addTerms(statement: Statement, { says, quantity }: FitmentRow): Terms {
    const { lastId } = this.#database.run(
      `INSERT INTO fitment_terms (says, quantity, family_id, part_id, made_from, made_to, serial_from, serial_to,
         position, source_id) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
      says,
      quantity,
      ...statement.subject,
    )
    const terms = { termsId: lastId, says, quantity }
    statement.terms.push(terms)
    return terms
  }

  /** Takes back what an earlier load said otherwise, whose terms stay for the history. Returns how much that was. */
  #remove(
    { brand, model_number }: FitmentRow,
    modelIds: readonly number[],
    others: readonly Terms[],
  ): number {
    let removed = 0
    for (const { termsId } of others) {
      for (const modelId of modelIds) removed += Number(this.#run.fitments.withdraw(modelId, termsId))
      if (hasWildcard(model_number))
        removed += this.#database.run(
          'DELETE FROM fitment_pattern WHERE brand_id = ? AND pattern = ? AND terms_id = ?',
          this.#run.known.brand(brand),
          model_number,
          termsId,
        ).changes
    }
    return removed
  }

  #add({ brand, model_number }: FitmentRow, modelIds: readonly number[], { termsId }: Terms): number {
    let added = 0
    for (const modelId of modelIds) added += Number(this.#run.fitments.say(modelId, termsId))
    if (hasWildcard(model_number))
      added += this.#database.run(
        'INSERT INTO fitment_pattern (brand_id, pattern, terms_id) VALUES (?, ?, ?) ON CONFLICT DO NOTHING',
        this.#run.known.brand(brand),
        model_number,
        termsId,
      ).changes
    return added
  }

  #sourceId(name: string): number {
    let id = this.#sources.get(name)
    if (id === undefined) {
      id = this.#database.run('INSERT INTO source (name) VALUES (?)', name).lastId
      this.#sources.set(name, id)
    }
    return id
  }
}

/** One number for a model and terms: each is far below 2^26, as both together must stay below 2^53. */
function pairKey(modelId: number, { termsId }: Terms): number {
  return modelId * 0x4000000 + termsId
}
