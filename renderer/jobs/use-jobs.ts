import { useQuery, useQueryClient } from '@tanstack/react-query'
import { useRef, useState } from 'react'
import type { GivenInput } from '../../shared-schemas/index.ts'
import type { Job } from '../../shared-schemas/jobs.ts'
import { ask } from '../bridge/client.ts'
import { wordInHand } from './job-words.ts'

export type JobFacts = Omit<GivenInput<'jobs.open-job'>, 'job' | 'initials'>

/** Which job is worked on, who signs, where parts are taken from, and what was done here last. */
export function useJobs() {
  const [number, setNumber] = useState<string | null>(null)
  const [isWriting, setWriting] = useState(false)
  const [isEnding, setEnding] = useState(false)
  const [initials, setInitials] = useState('')
  const [place, setPlace] = useState<string | null>(null)
  const [done, setDone] = useState('')
  const undoing = useRef<(() => Promise<string>)[]>([])
  const queries = useQueryClient()
  const signed = initials.trim() === '' ? {} : { initials }
  const found = useQuery({
    queryKey: ['stock', 'job', number],
    queryFn: () => ask('jobs.read-job', { job: number ?? '' }),
    enabled: number !== null,
    staleTime: 0,
  })
  const summary = useQuery({
    queryKey: ['catalogue.read-summary'],
    queryFn: () => ask('catalogue.read-summary', {}),
    staleTime: Number.POSITIVE_INFINITY,
  })
  const locations = summary.data?.locations ?? []
  const usable = locations.filter(({ kind }) => kind !== 'quarantine')
  const job = number === null ? undefined : found.data

  const keep = async (changed: Job) => {
    queries.setQueryData(['stock', 'job', changed.job], changed)
    await queries.invalidateQueries({ queryKey: ['stock'] })
    return changed
  }
  const show = (opened: string) => {
    if (opened !== number) undoing.current = []
    setNumber(opened)
    setWriting(false)
    setEnding(false)
    setPlace(null)
    setDone('')
  }
  const inHand = () => {
    if (number === null) throw new Error('Open a job first; then scan the part again.')
    return number
  }
  const takenFrom = place ?? job?.van ?? null

  return {
    ...{
      job,
      number,
      problem: found.error,
      locations,
      usable,
      initials,
      setInitials,
      signed,
      show,
      done,
      setDone,
    },
    ...{ isWriting, setWriting, isEnding, setEnding, takenFrom, setPlace, keep },
    leave: () => {
      setNumber(null)
      setWriting(false)
      setEnding(false)
    },
    open: async (facts: JobFacts, own: string) => {
      const opened = await ask('jobs.open-job', { ...facts, ...(own === '' ? {} : { job: own }), ...signed })
      await keep(opened)
      show(opened.job)
      return opened
    },
    change: async (facts: JobFacts) => {
      const changed = await keep(await ask('jobs.change-job', { job: inHand(), ...facts, ...signed }))
      setWriting(false)
      return changed
    },
    need: async (what: { readonly part?: string; readonly family?: string; readonly quantity: number }) =>
      keep(await ask('jobs.need-part', { job: inHand(), ...what, ...signed })),
    take: async (
      part: string,
      quantity: number,
      more: { readonly usedBeforeBooked?: boolean; readonly takeReserved?: boolean } = {},
    ) => {
      const job = inHand()
      const from = takenFrom === null ? {} : { from: takenFrom }
      const taken = await ask('jobs.take-part', { job, part, quantity, ...from, ...more, ...signed })
      const { movementId, partNumber } = taken.movement
      undoing.current.push(async () => {
        await ask('stock-ledger.reverse-movement', { movementId, reason: 'taken back at once', ...signed })
        await queries.invalidateQueries({ queryKey: ['stock'] })
        return `Taken back: ${partNumber} is in ${taken.movement.from} again.`
      })
      await keep(taken.job)
      return `${quantity} × ${partNumber} taken from ${taken.movement.from}.${wordInHand(taken.job, partNumber)}`
    },
    fit: async (part: string, quantity: number) => {
      const job = inHand()
      await keep(await ask('jobs.mark-fitted', { job, part, quantity, ...signed }))
      undoing.current.push(async () => {
        await keep(await ask('jobs.mark-fitted', { job, part, quantity: -quantity, ...signed }))
        return `Taken back: ${part} stands as it did before.`
      })
      return quantity > 0 ? `${part} is marked as fitted.` : `${part} is in hand again.`
    },
    bringBack: async (part: string, to: string) => {
      const back = await ask('jobs.bring-back', { job: inHand(), part, to, ...signed })
      const { movementId } = back.movement
      undoing.current.push(async () => {
        await ask('stock-ledger.reverse-movement', { movementId, reason: 'taken back at once', ...signed })
        await queries.invalidateQueries({ queryKey: ['stock'] })
        return `Taken back: ${part} is in hand again.`
      })
      await keep(back.job)
      return `1 × ${part} brought back to ${back.movement.to}.`
    },
    reopen: async () => keep(await ask('jobs.reopen-job', { job: inHand(), ...signed })),
    takeBack: async () => {
      const undo = undoing.current.at(-1)
      if (undo === undefined) throw new Error('Nothing was done on this job since it was opened here.')
      const said = await undo()
      undoing.current.pop()
      return said
    },
  }
}

export type Jobs = ReturnType<typeof useJobs>
