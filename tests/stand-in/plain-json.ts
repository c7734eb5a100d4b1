import { isDeepStrictEqual } from 'node:util'

/** Stricter than Electron's structured clone: only what JSON can say may cross, so that every door carries the same. */
export function asPlainJson(value: unknown, what: string): unknown {
  if (value === undefined) return null
  const back: unknown = JSON.parse(JSON.stringify(value))
  if (!isDeepStrictEqual(back, value)) throw new Error(`${what} is not plain JSON`)
  return back
}
