import { z } from 'zod'
import { loadedFile } from './catalogue.ts'
import { initials } from './initials.ts'
import { defineRequest } from './request.ts'
import { rowChange } from './row-change.ts'

const loadRunId = z.int().positive()

/** One load, or the undoing of one. */
export const loadEntry = z.object({
  loadRunId,
  at: z.string(),
  /** What was loaded; null for the undoing of a load, which has a reason. */
  path: z.string().nullable(),
  reason: z.string().nullable(),
  initials: z.string(),
  device: z.string(),
  undoes: loadRunId.nullable(),
  undoneBy: loadRunId.nullable(),
  /** By which layout a supplier's list was read, as it was called then; null for catalogue files. */
  layout: z.string().nullable(),
  files: z.array(loadedFile.extend({ sha256: z.string(), bytes: z.int() })),
})
export type LoadEntry = z.infer<typeof loadEntry>

/** Every load that changed something, the latest first, each with who, when, its files and their counts. */
export const listLoads = defineRequest({
  name: 'catalogue.list-loads',
  input: z.object({}),
  output: z.object({ loads: z.array(loadEntry) }),
})

/** What one load did row by row, as far as `most` rows. Its fitments are told in the history of each verdict. */
export const readLoad = defineRequest({
  name: 'catalogue.read-load',
  input: z.object({ loadRunId, most: z.int().min(1).max(1000).default(200) }),
  output: z.object({ changes: z.array(rowChange), rows: z.int() }),
})

/** Takes back everything that a load changed, as one further run. Refused where a later load changed the same rows. */
export const undoLoad = defineRequest({
  name: 'catalogue.undo-load',
  input: z.object({ loadRunId, reason: z.string().trim().min(1).max(400), initials }),
  output: z.object({
    loadRunId,
    /** Rows as they were before the load. */
    restored: z.int(),
    /** Rows that the load added and that something recorded since still names: they stay. */
    kept: z.array(z.object({ table: z.string(), rows: z.int() })),
  }),
})

/** Asks the load that is under way to stop: it then leaves nothing behind. */
export const stopLoading = defineRequest({
  name: 'catalogue.stop-loading',
  input: z.object({}),
  output: z.object({ wasLoading: z.boolean() }),
})
