import { z } from 'zod'
import { initials } from './initials.ts'
import { defineRequest } from './request.ts'

/** How the bytes of a file may be read. The first four are found by looking; the others only a person can choose. */
export const encodings = [
  'utf-8',
  'utf-16le',
  'utf-16be',
  'windows-1252',
  'windows-1250',
  'windows-1251',
  'windows-1253',
  'windows-1254',
  'windows-1257',
  'iso-8859-2',
  'iso-8859-15',
  'koi8-r',
  'ibm866',
  'macintosh',
  'shift_jis',
  'gb18030',
  'big5',
  'euc-kr',
] as const
export const encoding = z.enum(encodings)
export type Encoding = z.infer<typeof encoding>

export const separators = [',', ';', '\t', '|'] as const
export const separator = z.enum(separators)
export type Separator = z.infer<typeof separator>

/**
 * `certain`: nothing else is possible, or everything possible reads the same. `likely`: one way stands out, and
 * another is possible. `open`: several are as good. Nothing but `certain` is ever acted upon unasked.
 */
export const certainty = z.enum(['certain', 'likely', 'open'])
export type Certainty = z.infer<typeof certainty>

/** One way to read the bytes, with the first places where the ways differ as they would then read. */
const encodingOption = z.object({ encoding, samples: z.array(z.string()) })
export type EncodingOption = z.infer<typeof encodingOption>

export const encodingFound = z.object({
  encoding,
  certainty,
  /** What in the bytes says so. */
  why: z.string(),
  /** Every way that the whole file could be read, the most likely first. */
  options: z.array(encodingOption),
})
export type EncodingFound = z.infer<typeof encodingFound>

export const separatorFound = z.object({
  separator,
  certainty,
  why: z.string(),
  /** Each with the number of cells that the first row would then have. */
  options: z.array(z.object({ separator, cells: z.int() })),
})
export type SeparatorFound = z.infer<typeof separatorFound>

export const sheet = z.object({ name: z.string(), hidden: z.boolean() })
export type Sheet = z.infer<typeof sheet>

/** How a file is to be read. What is null is looked for, and the load is refused where that is not certain. */
export const reading = z.object({
  encoding: encoding.nullable().default(null),
  separator: separator.nullable().default(null),
  /** Of a workbook; null where it has one visible sheet. */
  sheet: z.string().nullable().default(null),
  /**
   * Which row that holds something has the headings, from 1; null where none does, and columns are called `column 1`,
   * `column 2`.
   */
  headerRow: z.int().min(1).max(1000).nullable().default(1),
})
export type Reading = z.infer<typeof reading>

export const layoutName = z
  .string()
  .trim()
  .min(1)
  .max(60)
  .regex(/^\P{Cc}*$/u, 'a name stands on one line')

const heading = z.string().max(500)

/** Whether a figure's decimal sign is a point or a comma; the other one may part thousands only where that is said. */
export const decimalSign = z.enum(['.', ','])

/** The order in which a date is written, in figures: `dmy` reads 17.06.2014 and 06/2014, `ymd` reads 2014/6 and 20140617. */
export const dateOrder = z.enum(['ymd', 'dmy', 'mdy'])

/** What one column of ours is filled with: a column of theirs, or the same text in every row. */
export const columnMatch = z
  .object({
    /** Ours, as `part_number`. */
    column: z.string().min(1),
    heading: heading.nullable().default(null),
    constant: z.string().max(500).nullable().default(null),
    decimalSign: decimalSign.nullable().default(null),
    /** Whether thousands are parted, by the sign that is not the decimal one, by a blank or by an apostrophe. */
    thousands: z.boolean().default(false),
    dateOrder: dateOrder.nullable().default(null),
    /** Their words for ours, as OEM for `genuine`. Letter case does not count; other words come through as they are. */
    words: z.array(z.object({ theirs: z.string(), ours: z.string() })).default([]),
  })
  .refine(({ heading, constant }) => (heading === null) !== (constant === null), {
    error: 'needs one of a heading or a constant',
  })
export type ColumnMatch = z.infer<typeof columnMatch>

/**
 * One row a statement, or one row with many models: in one cell parted by any of these separators, or each in a column
 * of its own. `column` is ours that they fill, such as `model_number`.
 */
export const shape = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('long') }),
  z.object({
    kind: z.literal('wide-cell'),
    column: z.string().min(1),
    heading,
    separators: z.array(z.string().min(1).max(5)).min(1),
  }),
  z.object({ kind: z.literal('wide-columns'), column: z.string().min(1), headings: z.array(heading).min(1) }),
])
export type Shape = z.infer<typeof shape>

export const layout = z.object({
  name: layoutName,
  /** Which catalogue file the rows are for, as `fitments.csv`. */
  feeds: z.string().min(1),
  reading,
  /** All headings of the file when the match was made, so that a new one is noticed. */
  headings: z.array(heading).min(1).max(2000),
  columns: z.array(columnMatch).min(1),
  shape: shape.default({ kind: 'long' }),
})
export type Layout = z.infer<typeof layout>

export const savedLayout = layout.extend({ savedAt: z.string(), initials: z.string() })
export type SavedLayout = z.infer<typeof savedLayout>

/** `line` is where the row begins in the file; a row of a sheet has its number. */
const previewRow = z.object({ line: z.int(), cells: z.array(z.string()), fault: z.string().nullable() })

/**
 * The first rows of any file as they would be read, and what was found in its bytes. What `reading` names is taken as
 * named, and what was found is told all the same. Never refuses for want of certainty: it shows the most likely.
 */
export const previewFile = defineRequest({
  name: 'catalogue.preview-file',
  input: z.object({
    path: z.string().min(1),
    reading: reading.prefault({}),
    rows: z.int().min(1).max(200).default(20),
  }),
  output: z.object({
    file: z.string(),
    bytes: z.int(),
    kind: z.enum(['csv', 'xlsx']),
    /** Null for a workbook. */
    encoding: encodingFound.nullable(),
    separator: separatorFound.nullable(),
    /** Whether the first line is `sep=…`, which is passed over and counts no row. */
    separatorLine: z.boolean(),
    /** Empty for CSV. */
    sheets: z.array(sheet),
    /** As the rows below were read: every null filled. `headerRow` null still means none. */
    reading,
    headings: z.array(z.string()),
    /** The rows above the one with the headings, so that a person sees which row that is. */
    above: z.array(previewRow),
    /** The first rows after the headings. */
    rows: z.array(previewRow),
    /** Saved layouts that this file's headings fit. */
    layouts: z.array(layoutName),
  }),
})
export type FilePreview = z.infer<typeof previewFile.output>

/** Which heading may be which column of ours, from known words. It is only ever proposed. */
export const proposeLayout = defineRequest({
  name: 'catalogue.propose-layout',
  input: z.object({
    path: z.string().min(1),
    reading: reading.prefault({}),
    /** Null: whichever of our files the headings agree with best. */
    feeds: z.string().nullable().default(null),
  }),
  output: z.object({
    feeds: z.string(),
    /** Every file of ours, the best agreement first. */
    targets: z.array(z.object({ file: z.string(), matched: z.int(), missing: z.array(z.string()) })),
    /** Every column of the file that it feeds, in our order. */
    columns: z.array(
      z.object({
        column: z.string(),
        needed: z.boolean(),
        /** What it holds, so that a sign or an order is asked for only where one matters. */
        holds: z.enum(['text', 'number', 'date', 'words']),
        /** The only words it takes, where it takes no others. */
        takes: z.array(z.string()),
        heading: z.string().nullable(),
        certainty,
        why: z.string(),
        decimalSign: decimalSign.nullable(),
        thousands: z.boolean(),
        dateOrder: dateOrder.nullable(),
        /** Of the first rows that hold something, so that the match can be judged. */
        samples: z.array(z.string()),
      }),
    ),
    /** Headings that nothing is proposed for. */
    unmatched: z.array(z.string()),
    shape,
    reading,
    headings: z.array(z.string()),
  }),
})
export type LayoutProposal = z.infer<typeof proposeLayout.output>

/** Keeps a layout under its name. One of that name is replaced only when that is asked for. */
export const saveLayout = defineRequest({
  name: 'catalogue.save-layout',
  input: z.object({ layout, replace: z.boolean().default(false), initials: initials.optional() }),
  output: z.object({ layout: savedLayout, replaced: z.boolean() }),
})

export const listLayouts = defineRequest({
  name: 'catalogue.list-layouts',
  input: z.object({}),
  output: z.object({ layouts: z.array(savedLayout) }),
})

export const renameLayout = defineRequest({
  name: 'catalogue.rename-layout',
  input: z.object({ name: layoutName, newName: layoutName }),
  output: z.object({ layout: savedLayout }),
})

export const removeLayout = defineRequest({
  name: 'catalogue.remove-layout',
  input: z.object({ name: layoutName }),
  output: z.object({ removed: savedLayout }),
})
