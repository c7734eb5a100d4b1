import { useQuery, useQueryClient } from '@tanstack/react-query'
import { useRef, useState } from 'react'
import type { TopUp } from '../../shared-schemas/van-counts.ts'
import { ask } from '../bridge/client.ts'
import { confirmPick, countPicks, joinPicks, type Pick } from './count-picks.ts'

/** The top-up of one van: the list as it was drawn up, what was confirmed of it, and the booking of that. */
export function useTopUp(signed: { readonly initials?: string }) {
  const [van, setVan] = useState<string | null>(null)
  const [prefer, setPrefer] = useState<'genuine' | 'pattern'>('genuine')
  const [picks, setPicks] = useState<readonly Pick[]>([])
  const [done, setDone] = useState('')
  // Scans follow each other faster than a state is drawn.
  const current = useRef<readonly Pick[]>([])
  const queries = useQueryClient()
  const list = useQuery({
    queryKey: ['top-up', van, prefer],
    queryFn: () => ask('van-counts.read-top-up', { van: van ?? '', prefer }),
    enabled: van !== null,
    // What is picked is held against the list as it was drawn up, not against one that shifts under the hand.
    staleTime: Number.POSITIVE_INFINITY,
    gcTime: 0,
  })
  const keep = (changed: readonly Pick[]) => {
    current.current = changed
    setPicks(changed)
  }
  const listed = (): TopUp => {
    if (list.data === undefined) throw new Error('Choose the van first; then scan the part again.')
    return list.data
  }
  return {
    ...{ van, prefer, list, picks, done },
    lines: list.data === undefined ? [] : countPicks(list.data, picks),
    begin: (chosen: string | null) => {
      keep([])
      setDone('')
      setVan(chosen)
      void queries.invalidateQueries({ queryKey: ['top-up'] })
    },
    preferKind: (kind: 'genuine' | 'pattern') => {
      keep([])
      setPrefer(kind)
    },
    /** Confirms pieces as they go into the van, or come out of it. Says so in one line. */
    confirm: (part: string, pieces: number, backTo: string) => {
      const lines = countPicks(listed(), current.current)
      const confirmed = confirmPick(lines, { part, pieces, backTo })
      if (!confirmed.ok) throw new Error(confirmed.why)
      keep([...current.current, confirmed.pick])
      setDone('')
      const { way, location } = confirmed.pick
      const of = lines.filter(line => line.part === part && line.way === way)
      const wanted = of.reduce((sum, line) => sum + line.wanted, 0)
      const picked = of.reduce((sum, line) => sum + line.picked, pieces)
      return way === 'into-van'
        ? `${part} into the van: ${picked} of ${wanted}.`
        : `${part} back to ${location}: ${picked} of ${wanted}.`
    },
    takeBack: () => {
      const last = current.current.at(-1)
      if (last === undefined) throw new Error('Nothing is confirmed that could be taken back.')
      keep(current.current.slice(0, -1))
      return `Taken back: ${last.quantity} × ${last.part} is not confirmed.`
    },
    /** Takes what another van has to spare, at once: it is in the hand of whoever drives that van. */
    takeSpare: async ({ partNumber, quantity, van: other }: TopUp['spares'][number]) => {
      const { van: mine } = listed()
      await ask('van-counts.record-top-up', {
        ...{ van: mine, lines: [{ part: partNumber, quantity, location: other }] },
        ...signed,
      })
      await refresh()
      setDone(`${quantity} × ${partNumber} moved from ${other} to ${mine}.`)
    },
    book: async () => {
      const { van: mine } = listed()
      const { movements } = await ask('van-counts.record-top-up', {
        ...{ van: mine, lines: joinPicks(current.current) },
        ...signed,
      })
      keep([])
      await refresh()
      setDone(
        `Booked: ${movements} ${movements === 1 ? 'movement' : 'movements'}. The list below is what is left.`,
      )
    },
  }

  async function refresh(): Promise<void> {
    await Promise.all([
      queries.invalidateQueries({ queryKey: ['top-up'] }),
      queries.invalidateQueries({ queryKey: ['stock'] }),
    ])
  }
}

export type TopUpOfVan = ReturnType<typeof useTopUp>
