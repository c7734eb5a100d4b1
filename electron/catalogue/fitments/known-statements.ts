import type { WritableDatabase } from '../../database/handles.ts'

/** Everything that makes two rows speak of the same thing, apart from the model. Of a model it says one thing. */
export interface Statement {
  /** Its place among all statements. */
  readonly place: number
  readonly subject: Subject
  readonly sayings: Saying[]
}

/** In the order of the columns of `fitment_terms`, from the family on. */
export type Subject = readonly (string | number | null)[]

/** One thing that is said of it. */
export interface Saying {
  /** Its place among all sayings. */
  readonly place: number
  readonly statement: Statement
  readonly says: 'includes' | 'excludes'
  readonly quantity: number | null
  /** Undefined until a row that says so is stored. */
  termsId: number | undefined
}

/** What was ever said, by its words: as stored, and as the rows of this run add to it. */
export class KnownStatements {
  readonly statements: Statement[] = []
  readonly sayings: Saying[] = []
  readonly #bySubject = new Map<string, Statement>()
  readonly #sources: Map<string, number>
  readonly #database: WritableDatabase

  constructor(database: WritableDatabase) {
    this.#database = database
    this.#sources = new Map(database.tuples<[string, number]>('SELECT name, source_id FROM source'))
    const stored = database.tuples<[number, Saying['says'], number | null, ...Subject]>(
      `SELECT terms_id, says, quantity, ${subjectColumns} FROM fitment_terms ORDER BY terms_id`,
    )
    for (const [termsId, says, quantity, ...subject] of stored)
      this.#add(this.statementOf(subject), { says, quantity, termsId })
  }

  statementOf(subject: Subject): Statement {
    const key = subject.join('\u001f')
    let statement = this.#bySubject.get(key)
    if (statement === undefined) {
      statement = { place: this.statements.length, subject, sayings: [] }
      this.statements.push(statement)
      this.#bySubject.set(key, statement)
    }
    return statement
  }

  sayingOf(statement: Statement, { says, quantity }: Pick<Saying, 'says' | 'quantity'>): Saying {
    const known = statement.sayings.find(saying => saying.says === says && saying.quantity === quantity)
    return known ?? this.#add(statement, { says, quantity, termsId: undefined })
  }

  sourceId(name: string): number {
    let id = this.#sources.get(name)
    if (id === undefined) {
      id = this.#database.run('INSERT INTO source (name) VALUES (?)', name).lastId
      this.#sources.set(name, id)
    }
    return id
  }

  /** The terms of a saying, stored where they are new. */
  termsOf(saying: Saying): number {
    saying.termsId ??= this.#database.run(
      `INSERT INTO fitment_terms (says, quantity, ${subjectColumns}) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
      saying.says,
      saying.quantity,
      ...saying.statement.subject,
    ).lastId
    return saying.termsId
  }

  #add(statement: Statement, saying: Pick<Saying, 'says' | 'quantity' | 'termsId'>): Saying {
    const added = { place: this.sayings.length, statement, ...saying }
    this.sayings.push(added)
    statement.sayings.push(added)
    return added
  }
}

const subjectColumns = 'family_id, part_id, made_from, made_to, serial_from, serial_to, position, source_id'

/** Whose statement it is: the last column of the subject. */
export function sourceOf({ subject }: Statement): number {
  return Number(subject.at(-1))
}
