import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import type {
  Encoding,
  FilePreview,
  Layout,
  Reading,
  SavedLayout,
} from '../../../shared-schemas/supplier-layouts.ts'
import { ask } from '../../bridge/client.ts'
import type { AskedList } from '../use-list-run.ts'
import { type DraftMatch, emptyMatch, layoutOf, listUnfilled, matchOfLayout } from './draft-match.ts'

const unread: Reading = { encoding: null, separator: null, sheet: null, headerRow: 1 }

interface SupplierState {
  readonly reading: Reading
  /** The saved layout it goes by; null while its columns are matched on screen. */
  readonly layout: string | null
  /** What was saved of the match on screen, so that a dry run of it still counts. */
  readonly saved: { readonly name: string; readonly likeness: string } | null
  readonly feeds: string | null
  readonly match: DraftMatch
  readonly name: string
}

const begun: SupplierState = {
  reading: unread,
  layout: null,
  saved: null,
  feeds: null,
  match: emptyMatch,
  name: '',
}

/** A supplier's own file: how it is read, which of its columns is which of ours, and what it is then loaded by. */
export function useSupplierList(path: string | null) {
  const [state, setState] = useState(begun)
  const change = (part: Partial<SupplierState>) => setState(before => ({ ...before, ...part }))
  const { reading, layout, feeds, match, name, saved } = state
  const preview = useQuery({
    queryKey: ['catalogue.preview-file', path, reading],
    queryFn: () => ask('catalogue.preview-file', { path: path ?? '', reading, rows: 20 }),
    enabled: path !== null,
    placeholderData: (before, query) => (query?.queryKey[1] === path ? before : undefined),
    staleTime: 0,
  })
  const proposal = useQuery({
    queryKey: ['catalogue.propose-layout', path, reading, feeds],
    queryFn: () => ask('catalogue.propose-layout', { path: path ?? '', reading, feeds }),
    enabled: path !== null && layout === null,
    placeholderData: (before, query) => (query?.queryKey[1] === path ? before : undefined),
    staleTime: 0,
  })
  const layouts = useQuery({
    queryKey: ['catalogue.list-layouts'],
    queryFn: () => ask('catalogue.list-layouts', {}),
    enabled: path !== null,
    staleTime: 0,
  })
  const doubt = preview.data === undefined ? undefined : findDoubt(preview.data, reading)
  const draft: Layout | null =
    preview.data === undefined || proposal.data === undefined
      ? null
      : layoutOf(match, {
          name: name.trim() || 'not named yet',
          feeds: proposal.data.feeds,
          reading: preview.data.reading,
          headings: preview.data.headings,
        })
  const draftLikeness = JSON.stringify({ ...draft, name: '' })
  const missing = findMissing(state, doubt, preview.data, proposal.data?.columns ?? [])
  return {
    state,
    change,
    preview,
    proposal,
    layouts: layouts.data?.layouts ?? [],
    doubt,
    draft,
    draftLikeness,
    /** What keeps it from being tried; undefined where nothing does. */
    missing,
    /** The same for whatever would be loaded alike. */
    likeness: layout === null || saved?.name === layout ? draftLikeness : `${layout} ${reading.encoding}`,
    restart: () => setState(begun),
    ask: (list: Pick<AskedList, 'path' | 'edition'>): AskedList | null => {
      if (missing !== undefined) return null
      if (layout !== null) return { ...list, layout, ...insisted(reading.encoding) }
      return draft === null ? null : { ...list, trialLayout: draft }
    },
    /** Starts from a saved match, to change it for this file. */
    startFrom: (from: SavedLayout) =>
      change({ layout: null, feeds: from.feeds, match: matchOfLayout(from), name: from.name }),
  }
}

export type SupplierList = ReturnType<typeof useSupplierList>

function insisted(encoding: Encoding | null): Pick<AskedList, 'encoding'> {
  return encoding === null ? {} : { encoding }
}

/** What a person must settle before the file can be read: nothing is guessed. */
function findDoubt({ encoding, separator }: FilePreview, reading: Reading): string | undefined {
  if (encoding !== null && encoding.certainty !== 'certain' && reading.encoding === null)
    return 'Choose how its letters are read: more than one way is possible.'
  if (separator !== null && separator.certainty !== 'certain' && reading.separator === null)
    return 'Choose what parts its cells: more than one sign is possible.'
  return undefined
}

function findMissing(
  { layout, match }: SupplierState,
  doubt: string | undefined,
  preview: FilePreview | undefined,
  columns: Parameters<typeof listUnfilled>[1],
): string | undefined {
  if (preview === undefined) return 'The file is not read yet.'
  if (layout !== null) return undefined
  if (doubt !== undefined) return doubt
  const unfilled = listUnfilled(match, columns)
  if (unfilled.length > 0)
    return `Match ${unfilled.join(', ')} first: without ${unfilled.length === 1 ? 'it' : 'them'} no row means anything.`
  return undefined
}
