import type { ModelFacts } from './part-dossier.ts'
import type { AlikeModels, Possibility } from './suppose-appliances.ts'

/** A reading that would tell open appliances apart: one plate position or the brand, which the model shows, or another. */
export type ReadingChoice = {
  readonly reading: string
  /** From 1 over the plate key; only for `model-number`. */
  readonly position: number | null
} & (
  | { readonly of: 'model'; readonly shows: (model: ModelFacts) => string }
  | { readonly of: 'possibility'; readonly shows: (possibility: Possibility) => string }
)

/**
 * What is left open as small whole numbers. Models and the possibilities of each kind of models stand apart and are
 * never multiplied out: thousands of models share the few possibilities of their kind.
 */
export interface ReadingTable {
  /** The readings that tell anything, the easiest first. */
  readonly choices: readonly ReadingChoice[]
  /** What each choice shows: by model or by possibility, as the choice is of. */
  readonly columns: readonly Column[]
  readonly models: number
  /** Models and possibilities stand kind by kind; of each kind where they begin and end. */
  readonly kinds: readonly KindOfModels[]
  /** By possibility, what would be sold. */
  readonly outcomes: Column
}

interface KindOfModels {
  readonly firstModel: number
  readonly endOfModels: number
  readonly firstPossibility: number
  readonly endOfPossibilities: number
}

/** A whole number from 0 for each row, equal where the rows show the same. */
export interface Column {
  readonly labels: Int32Array
  /** How many different labels there are. */
  readonly count: number
}

/** What has been read: models in one cell, and possibilities in one cell, have shown the same. */
export interface Cells {
  readonly models: Column
  readonly possibilities: Column
}

export function tabulateReadings(
  alike: readonly AlikeModels[],
  outcomeOf: (possibility: Possibility) => string,
): ReadingTable {
  const models = alike.flatMap(kind => kind.models)
  const possibilities = alike.flatMap(kind => kind.possibilities)
  const columnOf = (choice: ReadingChoice) =>
    numberLabels(choice.of === 'model' ? models.map(choice.shows) : possibilities.map(choice.shows))
  const telling = [...plateChoices(models), brandChoice, ...namedReadings(possibilities)]
    .map(choice => ({ choice, column: columnOf(choice) }))
    .filter(({ column }) => column.count > 1)
  return {
    choices: telling.map(({ choice }) => choice),
    columns: telling.map(({ column }) => column),
    models: models.length,
    kinds: boundKinds(alike),
    outcomes: numberLabels(possibilities.map(outcomeOf)),
  }
}

function boundKinds(alike: readonly AlikeModels[]): KindOfModels[] {
  let [endOfModels, endOfPossibilities] = [0, 0]
  return alike.map(({ models, possibilities }) => {
    const [firstModel, firstPossibility] = [endOfModels, endOfPossibilities]
    endOfModels += models.length
    endOfPossibilities += possibilities.length
    return { firstModel, endOfModels, firstPossibility, endOfPossibilities }
  })
}

function plateChoices(models: readonly ModelFacts[]): ReadingChoice[] {
  const longest = models.reduce((most, { key }) => Math.max(most, key.length), 0)
  return Array.from({ length: longest }, (_, at) => ({
    reading: 'model-number',
    position: at + 1,
    of: 'model',
    shows: ({ key }) => key[at] ?? '',
  }))
}

const brandChoice: ReadingChoice = {
  reading: 'brand',
  position: null,
  of: 'model',
  shows: ({ brand }) => brand,
}

/** After the number itself, in the order of ease: figures on the plate, its date, its serial, then what must be measured. */
function namedReadings(possibilities: readonly Possibility[]): ReadingChoice[] {
  const names = new Set(possibilities.flatMap(({ shows }) => [...shows.keys()]))
  const ease = ['volts', 'voltage', 'hertz', 'frequency', 'watts', 'made', 'serial']
  const rank = (name: string) => (ease.indexOf(name) + ease.length + 1) % (ease.length + 1)
  return [...names]
    .sort((one, other) => rank(one) - rank(other) || (one < other ? -1 : 1))
    .map(reading => ({
      reading,
      position: null,
      of: 'possibility',
      shows: ({ shows }) => shows.get(reading) ?? '',
    }))
}

function numberLabels(shown: readonly string[]): Column {
  const numbers = new Map<string, number>()
  const labels = Int32Array.from(shown, label => {
    const known = numbers.get(label)
    if (known !== undefined) return known
    numbers.set(label, numbers.size)
    return numbers.size - 1
  })
  return { labels, count: numbers.size }
}

/** Everything together: nothing has been read yet. */
export function nothingRead({ models, outcomes }: ReadingTable): Cells {
  return { models: oneCell(models), possibilities: oneCell(outcomes.labels.length) }
}

function oneCell(rows: number): Column {
  return { labels: new Int32Array(rows), count: 1 }
}

export function readMore({ choices, columns }: ReadingTable, cells: Cells, set: readonly number[]): Cells {
  let { models, possibilities } = cells
  for (const at of set) {
    const [choice, column] = [choices[at], columns[at]]
    if (choice === undefined || column === undefined)
      throw new Error(`a set names columns of its table, but ${at} is not one`)
    if (choice.of === 'model') models = splitCells(models, column)
    else possibilities = splitCells(possibilities, column)
  }
  return { models, possibilities }
}

/** Rows stay in one cell when they were in one and show the same. Arrays, since a set of thousands is split many times. */
function splitCells(cells: Column, column: Column): Column {
  if (cells.count === cells.labels.length) return cells
  const numbers = new Int32Array(cells.count * column.count)
  const labels = new Int32Array(cells.labels.length)
  let count = 0
  for (let row = 0; row < labels.length; row++) {
    const both = (cells.labels[row] ?? 0) * column.count + (column.labels[row] ?? 0)
    if (numbers[both] === 0) numbers[both] = ++count
    labels[row] = (numbers[both] ?? 1) - 1
  }
  return { labels, count }
}

/** True when nothing is left that would be sold for some of a cell and not for others. */
export function isDecided(table: ReadingTable, cells: Cells): boolean {
  return !outcomesOfCells(table, cells).includes(differing)
}

/** How many models are not yet decided; one whose possibilities are partly decided counts in part. */
export function countUndecided(table: ReadingTable, cells: Cells): number {
  const outcomeOf = outcomesOfCells(table, cells)
  let undecided = 0
  forEachMet(table, cells, (cell, _, models) => {
    if (outcomeOf[cell] === differing) undecided += models
  })
  return undecided
}

/** Bits still needed to know what would be sold, times the number of models (conditional entropy, Shannon 1948). */
export function countBits(table: ReadingTable, cells: Cells): number {
  const { count } = table.outcomes
  const inCell = new Float64Array(cells.models.count * cells.possibilities.count)
  const inBoth = new Float64Array(inCell.length * count)
  forEachMet(table, cells, (cell, outcome, models) => {
    inCell[cell] = (inCell[cell] ?? 0) + models
    inBoth[cell * count + outcome] = (inBoth[cell * count + outcome] ?? 0) + models
  })
  return inBoth.reduce((bits, models, both) => {
    const all = inCell[Math.floor(both / count)] ?? 0
    return models === 0 || models === all ? bits : bits - models * Math.log2(models / all)
  }, 0)
}

const nothingMet = 0
const differing = -1

/** By cell, the one outcome met in it from 1, or `differing`. */
function outcomesOfCells(table: ReadingTable, cells: Cells): Int32Array {
  const outcomeOf = new Int32Array(cells.models.count * cells.possibilities.count)
  forEachMet(table, cells, (cell, outcome) => {
    const known = outcomeOf[cell]
    outcomeOf[cell] = known === nothingMet || known === outcome + 1 ? outcome + 1 : differing
  })
  return outcomeOf
}

/**
 * Each possibility of the models of one kind in one cell, which are met as one: its cell of models and possibilities
 * together, what would be sold, and for how many models it stands when each possibility of a model is as likely.
 */
function forEachMet(
  { kinds, outcomes }: ReadingTable,
  { models, possibilities }: Cells,
  meet: (cell: number, outcome: number, models: number) => void,
): void {
  const alikeInCell = new Int32Array(models.count)
  for (const { firstModel, endOfModels, firstPossibility, endOfPossibilities } of kinds) {
    const cellOf = (row: number) => models.labels[row] ?? 0
    for (let row = firstModel; row < endOfModels; row++)
      alikeInCell[cellOf(row)] = (alikeInCell[cellOf(row)] ?? 0) + 1
    for (let row = firstModel; row < endOfModels; row++) {
      const alike = alikeInCell[cellOf(row)] ?? 0
      if (alike === 0) continue
      alikeInCell[cellOf(row)] = 0
      const each = alike / (endOfPossibilities - firstPossibility)
      for (let at = firstPossibility; at < endOfPossibilities; at++)
        meet(
          cellOf(row) * possibilities.count + (possibilities.labels[at] ?? 0),
          outcomes.labels[at] ?? 0,
          each,
        )
    }
  }
}
