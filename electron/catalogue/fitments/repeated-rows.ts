import type { Saying } from './known-statements.ts'

export interface KnownRow {
  readonly saying: Saying
  readonly modelId: number
}

type Cells = Readonly<Record<string, string>>

/** What sound rows came to, by their words: a row that repeats the model of one and all the rest of another says nothing new. */
export class RepeatedRows {
  readonly #rest: readonly string[]
  readonly #sayings = new Map<string, Saying>()
  readonly #models = new Map<string, number>()

  constructor(columns: readonly string[]) {
    this.#rest = columns.filter(column => column !== 'brand' && column !== 'model_number')
  }

  find(cells: Cells): KnownRow | undefined {
    const modelId = this.#models.get(keyOfModel(cells))
    if (modelId === undefined) return undefined
    const saying = this.#sayings.get(this.#keyOfRest(cells))
    return saying === undefined ? undefined : { saying, modelId }
  }

  remember(cells: Cells, { saying, modelId }: KnownRow): void {
    if (this.#models.size > mostKept) this.#models.clear()
    if (this.#sayings.size > mostKept) this.#sayings.clear()
    this.#models.set(keyOfModel(cells), modelId)
    this.#sayings.set(this.#keyOfRest(cells), saying)
  }

  #keyOfRest(cells: Cells): string {
    let key = ''
    for (const column of this.#rest) key += `${cells[column]}${between}`
    return key
  }
}

/** No cell that is sound holds it. */
const between = '\u001f'
const mostKept = 200_000

function keyOfModel({ brand, model_number }: Cells): string {
  return `${brand}${between}${model_number}`
}
