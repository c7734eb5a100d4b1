import highsModule, { type Highs } from 'highs'
import type { Choice, ChoiceProblem } from './list-choices.ts'
import type { Picked } from './weigh-order.ts'

export interface Solved {
  readonly picked: Picked
  /** No order there is has a smaller objective than this, in units. */
  readonly bound: number
}

export type SolveExactly = (problem: ChoiceProblem) => Solved | undefined

/** The solver, loaded once and when it is first wanted: its program has three megabytes. */
export function openExactSolver(): Promise<SolveExactly> {
  loading ??= loadHighs().then(
    (highs): SolveExactly =>
      problem =>
        solve(highs, problem),
  )
  return loading
}

// The package's default export is this function; its declaration is read as that of a CommonJS module, whose default
// would be the module itself.
const loadHighs = highsModule as unknown as () => Promise<Highs>

let loading: Promise<SolveExactly> | undefined

/**
 * The choices of least objective as a mixed-integer program: one yes or no for each choice and for leaving each line
 * out; for each supplier whether it is sent an order and whether that is free of carriage. Solved by HiGHS (branch and
 * cut; Huangfu and Hall, Mathematical Programming Computation 10, 2018) to a proof or for some seconds. Undefined where
 * nothing was found in time. What comes back is reckoned anew by `weighOrder`: a solver works with tolerances.
 */
function solve(highs: Highs, problem: ChoiceProblem): Solved | undefined {
  const { model, columns } = writeModel(problem, highs.infinity)
  return highs.withModel(model, solver => {
    solver.options.set({ output_flag: false, mip_rel_gap: 0, mip_abs_gap: 0.00005, time_limit: mostSeconds })
    solver.run()
    const bound = Math.round(Number(solver.info.get('mip_dual_bound')) * units)
    const { colValue } = solver.getSolution()
    if (!Number.isFinite(bound) || colValue.length !== model.numCols) return undefined
    const picked: (Choice | undefined)[] = problem.lines.map(() => undefined)
    for (const [at, choice] of columns.entries())
      if (choice !== undefined && (colValue[at] ?? 0) > 0.5) picked[choice.line] = choice
    return { picked, bound }
  })
}

const mostSeconds = 2
/** The solver is told amounts in whole money, so that its tolerances are far below a unit. */
const units = 10_000

function writeModel({ lines, leaveOut, suppliers, budget }: ChoiceProblem, infinity: number) {
  const columns: (Choice | undefined)[] = []
  const costs: number[] = []
  const rows: Row[] = []
  const addColumn = (cost: number, choice?: Choice) => {
    columns.push(choice)
    return costs.push(cost / units) - 1
  }
  const addRow = (least: number, most: number): Row => {
    const row = { least, most, columns: [], values: [] }
    rows.push(row)
    return row
  }
  const add = (row: Row | undefined, column: number, value: number) => {
    row?.columns.push(column)
    row?.values.push(value)
  }
  const spent = Number.isFinite(budget) ? addRow(-infinity, budget / units) : undefined
  const ofSupplier = suppliers.map(({ carriage, paidFrom, minimum }) => {
    const used = addColumn(carriage)
    add(spent, used, carriage / units)
    const reaches = minimum > 0 ? addRow(0, infinity) : undefined
    add(reaches, used, -minimum / units)
    const isFree = carriage > 0 && Number.isFinite(paidFrom)
    const free = isFree ? addRow(0, infinity) : undefined
    if (isFree) {
      const column = addColumn(-carriage)
      add(spent, column, -carriage / units)
      add(free, column, -paidFrom / units)
      const onlyIfUsed = addRow(0, infinity)
      add(onlyIfUsed, used, 1)
      add(onlyIfUsed, column, -1)
    }
    return { used, values: [reaches, free, spent] }
  })
  for (const [line, choices] of lines.entries()) {
    const one = addRow(1, 1)
    add(one, addColumn(leaveOut[line] ?? 0), 1)
    const bySupplier = Map.groupBy(choices, ({ supplier }) => supplier)
    for (const [supplier, ofLine] of bySupplier) {
      const terms = ofSupplier[supplier]
      if (terms === undefined) throw new Error(`a choice is of one of the suppliers, but ${supplier} is none`)
      const onlyIfUsed = addRow(0, infinity)
      add(onlyIfUsed, terms.used, 1)
      for (const choice of ofLine) {
        const column = addColumn(choice.cost, choice)
        add(one, column, 1)
        add(onlyIfUsed, column, -1)
        for (const row of terms.values) add(row, column, choice.spend / units)
      }
    }
  }
  return { columns, model: asModel(costs, rows) }
}

interface Row {
  readonly least: number
  readonly most: number
  readonly columns: number[]
  readonly values: number[]
}

/** Every column is a yes or no; the rows one after the other. */
function asModel(costs: readonly number[], rows: readonly Row[]) {
  const [numCols, numRows] = [costs.length, rows.length]
  let end = 0
  const starts = [
    0,
    ...rows.map(({ columns }) => {
      end += columns.length
      return end
    }),
  ]
  return {
    ...{ numCols, numRows },
    colCost: Float64Array.from(costs),
    colLower: new Float64Array(numCols),
    colUpper: new Float64Array(numCols).fill(1),
    integrality: new Int32Array(numCols).fill(1),
    rowLower: Float64Array.from(rows, ({ least }) => least),
    rowUpper: Float64Array.from(rows, ({ most }) => most),
    matrix: {
      ...{ format: 'csr' as const, numCols, numRows },
      starts: Int32Array.from(starts),
      indices: Int32Array.from(rows.flatMap(({ columns }) => columns)),
      values: Float64Array.from(rows.flatMap(({ values }) => values)),
    },
  }
}
