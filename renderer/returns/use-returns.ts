import { useQuery, useQueryClient } from '@tanstack/react-query'
import { useReducer, useRef, useState } from 'react'
import type { GivenInput } from '../../shared-schemas/index.ts'
import type { ReturnKind } from '../../shared-schemas/returns.ts'
import { ask } from '../bridge/client.ts'
import { kindWords } from './return-words.ts'

/** A return as it is being written. */
export interface ReturnDraft {
  readonly kind: ReturnKind
  readonly part: string
  readonly quantity: string
  readonly from: string
  readonly reference: string
  readonly reason: string
  readonly model: string
}

const emptyDraft: ReturnDraft = {
  ...{ kind: 'unused', part: '', quantity: '1', from: 'customer', reference: '', reason: '', model: '' },
}

/** What waits for a decision, the return that is being written, and the last steps, so that they can be taken back. */
export function useReturns() {
  const [draft, change] = useReducer(
    (before: ReturnDraft, changed: Partial<ReturnDraft>) => ({ ...before, ...changed }),
    emptyDraft,
  )
  const [state, setState] = useState<'undecided' | 'all'>('undecided')
  const [initials, setInitials] = useState('')
  const [done, setDone] = useState('')
  const made = useRef<{ readonly movementId: string; readonly said: string }[]>([])
  const queries = useQueryClient()
  const list = useQuery({
    queryKey: ['stock', 'returns', state],
    queryFn: () => ask('returns.list-returns', { state }),
    staleTime: 0,
    placeholderData: before => before,
  })
  const summary = useQuery({
    queryKey: ['catalogue.read-summary'],
    queryFn: () => ask('catalogue.read-summary', {}),
    staleTime: Number.POSITIVE_INFINITY,
  })
  /** A part that came back from a job did not fit the appliance of that job. */
  const ofJob = useQuery({
    queryKey: ['stock', 'job', draft.reference],
    queryFn: () => ask('jobs.read-job', { job: draft.reference }),
    enabled: draft.kind === 'wrong-fit' && draft.from === 'job' && /^\S+$/.test(draft.reference),
  })
  const jobModel = ofJob.data?.models?.settled
  const refresh = () => queries.invalidateQueries({ queryKey: ['stock'] })
  const locations = summary.data?.locations ?? []
  const note = (movementId: string, said: string) => made.current.push({ movementId, said })

  return {
    ...{ draft, change, state, setState, initials, setInitials, done, list, locations, jobModel },
    take: async () => {
      const { kind, part, quantity, from, reference, reason, model } = draft
      const appliance = model.trim() === '' ? jobModel : { modelNumber: model, brand: undefined }
      const taken = await ask('returns.take-return', {
        ...{ kind, part, from, reason, initials, quantity: Number(quantity) },
        ...(reference.trim() === '' ? {} : { reference }),
        ...(kind === 'wrong-fit' && appliance != null ? { model: appliance.modelNumber } : {}),
        ...(kind === 'wrong-fit' && appliance?.brand !== undefined ? { brand: appliance.brand } : {}),
      })
      note(taken.movementId, `${taken.partNumber} is not in ${taken.quarantine} any more.`)
      const caution =
        taken.fitRecordId === null ? '' : ' From now on a caution stands beside it for that appliance.'
      setDone(
        `${taken.quantity} × ${taken.partNumber} is in ${taken.quarantine}: ${kindWords[kind]}.${caution}`,
      )
      change({ ...emptyDraft, kind, from })
      await refresh()
    },
    decide: async (input: Omit<GivenInput<'returns.decide-return'>, 'initials'>) => {
      const decided = await ask('returns.decide-return', { ...input, initials })
      const last = decided.decisions.at(-1)
      if (last !== undefined) {
        note(last.movementId, `${decided.partNumber} is undecided again.`)
        setDone(`${last.quantity} × ${decided.partNumber} went to ${last.to}: ${last.reason}.`)
      }
      await refresh()
    },
    takeBack: async () => {
      const last = made.current.at(-1)
      if (last === undefined)
        throw new Error('Nothing was done here since the start. Take it back in the ledger of the part.')
      const reason = 'taken back at once'
      const signed = initials.trim() === '' ? {} : { initials }
      await ask('stock-ledger.reverse-movement', { movementId: last.movementId, reason, ...signed })
      made.current.pop()
      setDone('')
      await refresh()
      return `Taken back: ${last.said}`
    },
  }
}

export type Returns = ReturnType<typeof useReturns>
