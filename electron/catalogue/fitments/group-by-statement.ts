import type { GatheredPairs } from './gathered-pairs.ts'
import type { KnownStatements, Statement } from './known-statements.ts'

/**
 * The rows by the statement that they make, in their order: of a contested statement the places of its rows, which must
 * be gone through one by one, of any other the models alone. Both lie in one block of four bytes a row.
 */
export function* groupByStatement(
  rows: GatheredPairs,
  { statements, sayings }: KnownStatements,
  isContested: (statement: Statement) => boolean,
): Generator<number, Iterable<readonly [statement: Statement, placesOrModels: Uint32Array]>> {
  const statementOf = Uint32Array.from(sayings, ({ statement }) => statement.place)
  const contested = Uint8Array.from(statements, statement => Number(isContested(statement)))
  const starts = new Uint32Array(statements.length + 1)
  for (const { group, from, to } of rows.runs()) {
    const after = (statementOf[group] as number) + 1
    starts[after] = (starts[after] as number) + to - from
    yield 0
  }
  for (let at = 1; at < starts.length; at += 1)
    starts[at] = (starts[at] as number) + (starts[at - 1] as number)
  const next = starts.slice()
  const dealt = new Uint32Array(rows.size)
  for (const { group, from, to } of rows.runs()) {
    const statement = statementOf[group] as number
    const isOne = contested[statement] === 1
    let place = next[statement] as number
    for (let row = from; row < to; row += 1, place += 1) dealt[place] = isOne ? row : rows.modelAt(row)
    next[statement] = place
    yield 0
  }
  return (function* () {
    for (const statement of statements) {
      const ofStatement = dealt.subarray(starts[statement.place], starts[statement.place + 1])
      if (ofStatement.length > 0) yield [statement, ofStatement] as const
    }
  })()
}
