import { useQuery, useQueryClient } from '@tanstack/react-query'
import { useRef, useState } from 'react'
import type { CountLine, Explanation } from '../../shared-schemas/van-counts.ts'
import { ask } from '../bridge/client.ts'
import { pairLines } from './pair-lines.ts'

export type CountStage = 'choose' | 'count' | 'compare'

interface Taken {
  readonly partNumber: string
  readonly readingId: string
}

/** One count from its beginning to its posting, and what was read in it, so that the last of it can be taken back. */
export function useCount() {
  const [countId, setCountId] = useState<string | null>(null)
  const [stage, setStage] = useState<CountStage>('choose')
  const [initials, setInitials] = useState('')
  const [recounting, setRecounting] = useState<string | null>(null)
  const taken = useRef<Taken[]>([])
  const counting = useRef<string | null>(null)
  // The next scan of these replaces what was counted before.
  const toRecount = useRef(new Set<string>())
  const queries = useQueryClient()
  const refresh = () => queries.invalidateQueries({ queryKey: ['count'] })
  const signed = initials.trim() === '' ? {} : { initials }

  const sheet = useQuery({
    queryKey: ['count', countId, stage === 'compare'],
    queryFn: () => ask('van-counts.read-count', { countId: countId ?? '', compare: stage === 'compare' }),
    enabled: countId !== null,
    staleTime: 0,
    placeholderData: (before, query) => (query?.queryKey[1] === countId ? before : undefined),
  })

  const open = (id: string, at: CountStage) => {
    if (counting.current !== id) taken.current = []
    counting.current = id
    setCountId(id)
    setStage(at)
  }
  const goTo = (next: CountStage) => {
    // Whoever goes on without counting again meant to leave what was counted.
    toRecount.current.clear()
    setRecounting(null)
    setStage(next)
  }
  return {
    ...{ countId, stage, sheet, initials, setInitials, signed, recounting, setStage: goTo, open },
    begin: async (location: string) => {
      const begun = await ask('van-counts.begin-count', { location, ...signed })
      open(begun.countId, 'count')
      void queries.invalidateQueries({ queryKey: ['counts'] })
      return begun.isNew ? `The count of ${location} begins.` : `The count of ${location} goes on.`
    },
    /** Takes one reading. Says so in one line. */
    read: async (part: string, pieces: number, how: 'whole' | 'add') => {
      const id = counting.current
      if (id === null)
        throw new Error(`Choose the van or shelf first, or scan its label; then scan ${part} again.`)
      const isAnew = toRecount.current.delete(part)
      const read = await ask('van-counts.record-reading', {
        ...{ countId: id, part, pieces, how: isAnew ? 'whole' : how },
        ...signed,
      })
      taken.current.push(read)
      void refresh()
      return `${read.partNumber}: ${read.counted} counted.`
    },
    takeBack: async () => {
      const last = taken.current.at(-1)
      if (counting.current === null || last === undefined) throw new Error('Nothing is left to take back.')
      const { readingId } = last
      const back = await ask('van-counts.withdraw-reading', {
        countId: counting.current,
        readingId,
        ...signed,
      })
      taken.current.pop()
      void refresh()
      return back.counted === null
        ? `Taken back. ${back.partNumber} is not counted.`
        : `Taken back. ${back.partNumber}: ${back.counted} counted.`
    },
    recount: (part: string) => {
      toRecount.current.add(part)
      setRecounting(part)
      setStage('count')
    },
    explain: async (line: CountLine, chosen: Explanation) => {
      if (countId === null) return
      for (const { part, explanation } of pairLines(line, chosen, sheet.data?.lines ?? [])) {
        const { kind, detail } = explanation
        await ask('van-counts.explain-variance', { countId, part, kind, detail, ...signed })
      }
      await refresh()
    },
    post: async () => {
      if (countId === null) throw new Error('a count is posted once it is chosen')
      const posted = await ask('van-counts.post-count', { countId, ...signed })
      taken.current = []
      await Promise.all([
        refresh(),
        queries.invalidateQueries({ queryKey: ['counts'] }),
        queries.invalidateQueries({ queryKey: ['stock'] }),
      ])
      return posted
    },
    leave: () => {
      counting.current = null
      setCountId(null)
      goTo('choose')
    },
  }
}

export type Count = ReturnType<typeof useCount>
