/** Columns of an order as its first line names them, and what stands between its cells. */
export interface OrderColumns {
  readonly names: readonly string[]
  readonly separator: string
}

/**
 * As the check reads it: a spreadsheet pastes tabs, and some write semicolons. Without named columns they are the part's
 * number and the quantity.
 */
export function readOrderColumns(text: string): OrderColumns {
  const [first = ''] = text.trimStart().split(/\r\n|\n|\r/, 1)
  const separator = first.includes('\t') ? '\t' : first.includes(';') && !first.includes(',') ? ';' : ','
  const names = first.split(separator).map(name =>
    name
      .trim()
      .toLowerCase()
      .replaceAll(/[\s-]+/g, '_'),
  )
  return { separator, names: names.includes('part_number') ? names : ['part_number', 'quantity'] }
}
