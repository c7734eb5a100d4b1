import type { Bindable } from '../../database/handles.ts'
import { RowFault } from './row-fault.ts'

/** What became of a sound row. */
export type Outcome = 'added' | 'changed' | 'unchanged'

interface Kept {
  readonly values: readonly Bindable[]
  /** The line of this run that said so; 0 for what the database held before. */
  readonly line: number
}

/**
 * Rows by their key, as the database held them and as this run has stated them. A row is written only when it says
 * something new; one that says otherwise than an earlier line of the same run is a fault, since neither is more right.
 */
export class KeyedRows {
  readonly #kept = new Map<string, Kept>()

  /** `existing` begins with the key's columns. */
  constructor(keyColumns: number, existing: Iterable<readonly Bindable[]>) {
    for (const row of existing)
      this.#kept.set(joinKey(row.slice(0, keyColumns)), { values: row.slice(keyColumns), line: 0 })
  }

  write(stated: StatedRow, write: (before: readonly Bindable[] | undefined) => void): Outcome {
    const key = joinKey(stated.key)
    const before = this.#kept.get(key)
    const isSame = before !== undefined && isEqual(before.values, stated.values)
    if (before !== undefined && before.line > 0 && !isSame) throw contradicts(before.line)
    if (!isSame) write(before?.values)
    this.#kept.set(key, { values: stated.values, line: stated.line })
    return before === undefined ? 'added' : isSame ? 'unchanged' : 'changed'
  }

  /** What the database held before and this run has not stated. */
  *unstated(): Iterable<readonly Bindable[]> {
    for (const [key, { line }] of this.#kept) if (line === 0) yield key.split(keySeparator)
  }

  read(key: readonly Bindable[]): readonly Bindable[] | undefined {
    return this.#kept.get(joinKey(key))?.values
  }
}

export interface StatedRow {
  readonly key: readonly Bindable[]
  readonly values: readonly Bindable[]
  readonly line: number
}

export function contradicts(line: number): RowFault {
  return new RowFault(
    '',
    `contradicts line ${line}, which is about the same thing: keep the one that is right`,
  )
}

const keySeparator = '\u001f'

function joinKey(parts: readonly Bindable[]): string {
  return parts.length === 1 ? String(parts[0]) : parts.join(keySeparator)
}

function isEqual(one: readonly Bindable[], other: readonly Bindable[]): boolean {
  return one.every((value, at) => value === other[at])
}
