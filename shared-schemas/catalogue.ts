import { z } from 'zod'
import { initials } from './initials.ts'
import { defineRequest } from './request.ts'
import { rowChange } from './row-change.ts'

/** A row that was not taken. `line` counts from 1 with the header as line 1; `column` is empty where the whole row is at fault. */
export const rejectedRow = z.object({
  file: z.string(),
  line: z.int(),
  column: z.string(),
  reason: z.string(),
})
export type RejectedRow = z.infer<typeof rejectedRow>

export const loadedFile = z.object({
  file: z.string(),
  added: z.int(),
  changed: z.int(),
  unchanged: z.int(),
  /** Rows of the former edition that the new one no longer has. */
  retired: z.int(),
  rejected: z.int(),
})
export type LoadedFile = z.infer<typeof loadedFile>

/** Loads catalogue files in one transaction: every sound row or, when anything breaks, none. */
export const loadFiles = defineRequest({
  name: 'catalogue.load-files',
  input: z.object({
    /** A folder of catalogue files, or one such file. */
    path: z.string().min(1),
    dryRun: z.boolean().default(false),
    /** Load nothing when any row is rejected. */
    strict: z.boolean().default(false),
    /** Where to write the rejected rows as they stood, with the reason beside them. */
    rejectsFile: z.string().min(1).optional(),
    /**
     * The files are the whole new edition of every supplier's offers and every source's fitments that they name: what
     * these no longer have is retired.
     */
    edition: z.boolean().default(false),
    /** Who loads. */
    initials: initials.optional(),
    /** So many of the rows that were written are told, with what they said before. */
    showChanges: z.int().min(0).max(1000).default(0),
  }),
  output: z.object({
    files: z.array(loadedFile),
    rejected: z.array(rejectedRow),
    dryRun: z.boolean(),
    changes: z.array(rowChange),
  }),
})
export type LoadReport = z.infer<typeof loadFiles.output>

/** How much the catalogue holds, for the empty screen and for the foot of a report. */
export const readSummary = defineRequest({
  name: 'catalogue.read-summary',
  input: z.object({}),
  output: z.object({
    catalogueVersion: z.int(),
    brands: z.array(z.string()),
    applianceTypes: z.array(z.string()),
    models: z.int(),
    families: z.int(),
    parts: z.int(),
    fitments: z.int(),
    locations: z.array(
      z.object({ location: z.string(), kind: z.enum(['shop', 'van', 'quarantine']), name: z.string() }),
    ),
  }),
})
