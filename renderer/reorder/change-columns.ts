import type { OrderingLayout } from '../../shared-schemas/order-sheets.ts'

/** A column of a supplier's order file while it is being laid out: it keeps its id wherever it is moved. */
export interface LaidColumn {
  readonly id: number
  readonly heading: string
  readonly holds: OrderingLayout['columns'][number]['holds']
}

export function layColumns(columns: OrderingLayout['columns']): LaidColumn[] {
  return columns.map((column, id) => ({ id, ...column }))
}

/** One more at the end, which holds nothing yet. */
export function addColumn(columns: readonly LaidColumn[]): LaidColumn[] {
  const id = Math.max(-1, ...columns.map(column => column.id)) + 1
  return [...columns, { id, heading: '', holds: 'nothing' }]
}

export function changeColumn(columns: readonly LaidColumn[], changed: LaidColumn): LaidColumn[] {
  return columns.map(column => (column.id === changed.id ? changed : column))
}

export function removeColumn(columns: readonly LaidColumn[], id: number): LaidColumn[] {
  return columns.filter(column => column.id !== id)
}

/** One place nearer the beginning; the first stays where it is. */
export function moveUp(columns: readonly LaidColumn[], id: number): LaidColumn[] {
  const at = columns.findIndex(column => column.id === id)
  const [before, moved] = [columns[at - 1], columns[at]]
  if (before === undefined || moved === undefined) return [...columns]
  return columns.with(at - 1, moved).with(at, before)
}
