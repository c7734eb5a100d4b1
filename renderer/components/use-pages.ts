import { keepPreviousData, useQueries, useQuery } from '@tanstack/react-query'
import { useCallback, useState } from 'react'

interface PagesAsked<Page, Row> {
  /** Says what is listed: another name is another list. */
  readonly name: readonly unknown[]
  readonly askPage: (from: number, most: number) => Promise<Page>
  readonly rowsOf: (page: Page) => readonly Row[]
}

/**
 * A list too long to be held in the window: only the pages in sight are asked for. Until a list by another name has
 * answered, the first page of the last one stays.
 */
export function usePages<Page, Row>({ name, askPage, rowsOf }: PagesAsked<Page, Row>) {
  const likeness = JSON.stringify(name)
  const [sight, setSight] = useState({ likeness, first: 0, last: 0 })
  const isSeen = sight.likeness === likeness
  const pages = isSeen ? listPages(sight) : []
  const query = (page: number) => ({
    queryKey: [...name, 'page', page],
    queryFn: () => askPage(page * rowsOfPage, rowsOfPage),
    // Two pages are compared leaf by leaf otherwise, which would only cost the frame.
    structuralSharing: false,
  })
  const head = useQuery({ ...query(0), placeholderData: keepPreviousData })
  const others = useQueries({ queries: pages.map(query) })
  const rowAt = (at: number): Row | undefined => {
    const page = Math.floor(at / rowsOfPage)
    const answer = page === 0 ? head.data : others[pages.indexOf(page)]?.data
    return answer && rowsOf(answer)[at % rowsOfPage]
  }
  const onSight = useCallback(
    (first: number, last: number) => setSight({ likeness, first, last }),
    [likeness],
  )
  const failed = [head, ...others].find(({ error }) => error !== null)
  return {
    head: head.data,
    isWaiting: head.isFetching,
    problem: failed?.error ?? null,
    retry: () => void failed?.refetch(),
    rowAt,
    onSight,
  }
}

const rowsOfPage = 100

/** The pages that hold the rows in sight; the first is always there. */
function listPages({ first, last }: { readonly first: number; readonly last: number }): number[] {
  const [from, to] = [first, last].map(at => Math.floor(at / rowsOfPage)) as [number, number]
  return Array.from({ length: to - from + 1 }, (_, at) => from + at).filter(page => page > 0)
}
