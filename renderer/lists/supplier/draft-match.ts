import type {
  ColumnMatch,
  Layout,
  LayoutProposal,
  Reading,
  SavedLayout,
  Shape,
} from '../../../shared-schemas/supplier-layouts.ts'

export type ProposedColumn = LayoutProposal['columns'][number]

/** What the person has settled so far: our columns that are filled, each once, and how rows name models. */
export interface DraftMatch {
  readonly columns: readonly ColumnMatch[]
  readonly shape: Shape
}

export const emptyMatch: DraftMatch = { columns: [], shape: { kind: 'long' } }

export function matchOf(draft: DraftMatch, column: string): ColumnMatch | undefined {
  return draft.columns.find(match => match.column === column)
}

/** Fills one of our columns, or with null leaves it empty. */
export function setMatch(draft: DraftMatch, column: string, match: ColumnMatch | null): DraftMatch {
  const others = draft.columns.filter(other => other.column !== column)
  return { ...draft, columns: match === null ? others : [...others, match] }
}

export function emptyColumn(column: string): ColumnMatch {
  return {
    column,
    heading: null,
    constant: null,
    decimalSign: null,
    thousands: false,
    dateOrder: null,
    words: [],
  }
}

/** Takes what is proposed for one column; the words that were given for it stay. */
export function takeProposal(draft: DraftMatch, proposed: ProposedColumn): DraftMatch {
  const { column, heading, decimalSign, thousands, dateOrder } = proposed
  if (heading === null) return draft
  const words = matchOf(draft, column)?.words ?? []
  return setMatch(draft, column, {
    column,
    heading,
    constant: null,
    decimalSign,
    thousands,
    dateOrder,
    words,
  })
}

/** A column that the shape fills is not filled a second time. */
export function takeShape(draft: DraftMatch, shape: Shape): DraftMatch {
  return shape.kind === 'long' ? { ...draft, shape } : { ...setMatch(draft, shape.column, null), shape }
}

/** Takes everything that is proposed for what is still empty. */
export function takeAll(draft: DraftMatch, proposal: LayoutProposal): DraftMatch {
  const shaped = draft.shape.kind === 'long' ? takeShape(draft, proposal.shape) : draft
  const isShaped = (column: string) => shaped.shape.kind !== 'long' && shaped.shape.column === column
  return proposal.columns
    .filter(({ column }) => matchOf(shaped, column) === undefined && !isShaped(column))
    .reduce(takeProposal, shaped)
}

/** Our columns that no row can do without and that nothing fills yet. */
export function listUnfilled(draft: DraftMatch, columns: readonly ProposedColumn[]): string[] {
  return columns
    .filter(({ needed }) => needed)
    .map(({ column }) => column)
    .filter(column => !isFilled(draft, column))
}

function isFilled(draft: DraftMatch, column: string): boolean {
  if (draft.shape.kind !== 'long' && draft.shape.column === column) return true
  const match = matchOf(draft, column)
  return match !== undefined && (match.heading !== null || match.constant !== '')
}

interface LayoutParts {
  readonly name: string
  readonly feeds: string
  readonly reading: Reading
  readonly headings: readonly string[]
}

/** The layout as it is tried and saved. What is to be the same in every row, but was left empty, is not said at all. */
export function layoutOf(draft: DraftMatch, { name, feeds, reading, headings }: LayoutParts): Layout {
  const columns = draft.columns.filter(({ constant }) => constant !== '')
  return { name, feeds, reading, headings: [...headings], columns, shape: draft.shape }
}

export function matchOfLayout({ columns, shape }: SavedLayout): DraftMatch {
  return { columns, shape }
}

/** `OEM = genuine, AM = pattern` as pairs; what has no sign between is not yet one. */
export function readWords(text: string): ColumnMatch['words'] {
  return text.split(',').flatMap(pair => {
    const [theirs = '', ours = ''] = pair.split('=').map(word => word.trim())
    return theirs === '' || ours === '' ? [] : [{ theirs, ours }]
  })
}

export function writeWords(words: ColumnMatch['words']): string {
  return words.map(({ theirs, ours }) => `${theirs} = ${ours}`).join(', ')
}
