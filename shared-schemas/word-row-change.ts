import type { RowChange } from './row-change.ts'

/** A row change in one line: `offer Q1 · 480 changed: price 3.20, was 3.10`. */
export function wordRowChange({ table, change, row, columns }: RowChange): string {
  const said = columns.map(({ column, before, after }) => {
    const now = change === 'removed' ? before : after
    const was = change === 'changed' ? `, was ${before || 'empty'}` : ''
    return `${column.replaceAll('_', ' ')} ${now || 'empty'}${was}`
  })
  const what = `${table.replaceAll('_', ' ')} ${row} ${change}`
  return said.length === 0 ? what : `${what}: ${said.join('; ')}`
}
