import type { WritableDatabase } from '../../database/handles.ts'
import { type ChangeSpan, readLastChange } from './load-log-queries.ts'
import { recordRowChanges } from './record-row-changes.ts'

/** Keeps every row change from here to `end`, which says where they stand. */
export function beginLog(database: WritableDatabase): { readonly end: () => ChangeSpan } {
  const first = readLastChange(database) + 1
  const recording = recordRowChanges(database)
  return {
    end: () => {
      recording.stop()
      return { first, last: readLastChange(database) }
    },
  }
}
