import { readFileSync } from 'node:fs'
import path from 'node:path'

/** A published or independently computed value, with its source beside it. */
export interface ReferenceValue {
  readonly id: string
  readonly topic: string
  // Each topic has its own shape, which the check of that topic knows.
  // biome-ignore lint/suspicious/noExplicitAny: the file is data of many shapes, read only by tests
  readonly inputs: any
  // biome-ignore lint/suspicious/noExplicitAny: as above
  readonly expected: any
  readonly tolerance: number
  readonly source: { readonly author: string; readonly title: string; readonly year: number | null }
}

const values: readonly ReferenceValue[] = JSON.parse(
  readFileSync(path.join(import.meta.dirname, 'reference-values.json'), 'utf8'),
)

/** The values whose topic begins so; there is at least one, or the check would check nothing. */
export function valuesOn(topic: string): readonly ReferenceValue[] {
  const found = values.filter(value => value.topic.startsWith(topic))
  if (found.length === 0) throw new Error(`no reference value is about ${topic}`)
  return found
}
