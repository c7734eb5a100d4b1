import { z } from 'zod'
import { initials } from './initials.ts'
import { defineRequest } from './request.ts'
import { rowChange } from './row-change.ts'
import { encoding, layout, layoutName } from './supplier-layouts.ts'

/** A row that was not taken. `line` counts from 1 with the header as line 1; `column` is empty where the whole row is at fault. */
export const rejectedRow = z.object({
  file: z.string(),
  line: z.int(),
  column: z.string(),
  reason: z.string(),
  /** The cell as it stood; empty where the whole row is at fault. */
  value: z.string(),
  /** What was probably meant, where only one thing can be: for a person to accept. */
  mend: z.string().nullable(),
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

const loadFilesInput = z.object({
  /** A folder of catalogue files, or one such file; with a layout, one file of any name. */
  path: z.string().min(1),
  dryRun: z.boolean().default(false),
  /** Load nothing when any row is rejected, or a file of the folder is none of the catalogue's. */
  strict: z.boolean().default(false),
  /**
   * Where to write the rejected rows, with the reason after each. Of one file: a CSV in its own headings, to be mended
   * and loaded again as it stands. Of a folder: a folder for one such file each, or a `.csv` for one list of them all.
   */
  rejectsFile: z.string().min(1).optional(),
  /**
   * The files are the whole new edition of every supplier's offers and every source's fitments that they name, and of
   * every kit and every part replaced with others: what these no longer have is retired.
   */
  edition: z.boolean().default(false),
  /** Who loads. */
  initials: initials.optional(),
  /** So many of the rows that were written are told, with what they said before. */
  showChanges: z.int().min(0).max(1000).default(0),
  /** The saved layout by which the file is read and matched. */
  layout: layoutName.optional(),
  /** One that is not saved, to try it. */
  trialLayout: layout.optional(),
  /** Reads the file so this once, whatever the layout says and the bytes seem to be. */
  encoding: encoding.optional(),
})

/** Loads catalogue files in one transaction: every sound row or, when anything breaks, none. */
export const loadFiles = defineRequest({
  name: 'catalogue.load-files',
  input: loadFilesInput.refine(
    ({ layout, trialLayout, dryRun }) => trialLayout === undefined || (dryRun && layout === undefined),
    {
      path: ['trialLayout'],
      error: 'a layout that is not saved is for a dry run, and takes the place of a saved one',
    },
  ),
  output: z.object({
    files: z.array(loadedFile),
    /** CSV files of the folder that were passed over, since they have no catalogue file's name. */
    leftOut: z.array(z.string()),
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

/** What can be loaded where a path was typed so far, since a page is never told the path of a file that was picked. */
export const listFolder = defineRequest({
  name: 'catalogue.list-folder',
  input: z.object({
    /** As far as it was typed; empty is the person's own folder. */
    typed: z.string().max(4000).default(''),
    most: z.int().min(1).max(1000).default(200),
  }),
  output: z.object({
    folder: z.string(),
    /** By name; a folder's path ends as a folder's does, so that typing can go on. */
    entries: z.array(
      z.object({
        path: z.string(),
        name: z.string(),
        kind: z.enum(['folder', 'catalogue-file', 'supplier-file']),
        bytes: z.int().nullable(),
      }),
    ),
    /** So many more begin like that. */
    left: z.int(),
    /** What the path names as it stands; null where that is nothing that can be loaded. */
    named: z
      .object({
        path: z.string(),
        kind: z.enum(['folder', 'catalogue-file', 'supplier-file']),
        /** How many files of ours a folder holds. */
        catalogueFiles: z.int(),
      })
      .nullable(),
  }),
})

/** How far the load that is under way has come; null while there is none. */
export const readLoading = defineRequest({
  name: 'catalogue.read-loading',
  input: z.object({}),
  output: z.object({
    loading: z
      .object({
        /** The file being read, empty before the first; rows done of it, of about as many. */
        file: z.string(),
        rowsDone: z.int(),
        rowsExpected: z.int(),
        isStopping: z.boolean(),
      })
      .nullable(),
  }),
})
