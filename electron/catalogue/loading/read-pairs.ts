import { RowFault } from './row-fault.ts'

/** Reads `name=value;name=value`. A name comes once. */
export function readPairs(cell: string, column: string): [name: string, value: string][] {
  const pairs = new Map<string, string>()
  for (const entry of cell.split(';')) {
    if (entry.trim() === '') continue
    const at = entry.indexOf('=')
    const name = entry.slice(0, Math.max(at, 0)).trim()
    const value = entry.slice(at + 1).trim()
    if (name === '' || value === '')
      throw new RowFault(column, `“${entry.trim()}” is no pair: write name=value, with a ; between two`)
    if (pairs.has(name)) throw new RowFault(column, `gives “${name}” twice: keep one`)
    pairs.set(name, value)
  }
  return [...pairs]
}
