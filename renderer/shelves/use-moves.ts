import { useQueryClient } from '@tanstack/react-query'
import { useReducer, useRef, useState } from 'react'
import { AskProblem } from '../bridge/ask-problem.ts'
import { ask } from '../bridge/client.ts'
import { wordMovement } from './shelf-words.ts'
import type { Shelves } from './use-shelves.ts'

/** A movement as it is being written. */
export interface MoveDraft {
  readonly part: string
  readonly quantity: string
  readonly from: string
  readonly to: string
  readonly reason: string
  readonly reference: string
}

const emptyDraft: MoveDraft = { part: '', quantity: '1', from: 'shop', to: '', reason: '', reference: '' }

/** Writes movements one after the other, and takes the last ones back. */
export function useMoves({ signed }: Shelves) {
  const [draft, change] = useReducer(
    (before: MoveDraft, changed: Partial<MoveDraft>) => ({ ...before, ...changed }),
    emptyDraft,
  )
  const [problem, setProblem] = useState<Error | null>(null)
  const [done, setDone] = useState('')
  const made = useRef<string[]>([])
  const isMoving = useRef(false)
  const queries = useQueryClient()
  const refresh = () => queries.invalidateQueries({ queryKey: ['stock'] })

  const move = async (
    more: { readonly usedBeforeBooked?: boolean; readonly takeReserved?: boolean } = {},
  ) => {
    if (isMoving.current) return
    isMoving.current = true
    try {
      const { part, quantity, from, to, reason, reference } = draft
      const { movement } = await ask('stock-ledger.record-movement', {
        ...{ part, from, to, reason, quantity: Number(quantity) },
        ...(reference.trim() === '' ? {} : { reference }),
        ...signed,
        ...more,
      })
      made.current.push(movement.movementId)
      setProblem(null)
      setDone(`Moved: ${wordMovement(movement)}.`)
      // Where from and where to stay: the next part often goes the same way.
      change({ part: '', quantity: '1', reference: '' })
      await refresh()
    } catch (thrown) {
      if (!(thrown instanceof AskProblem)) throw thrown
      setDone('')
      setProblem(thrown)
    } finally {
      isMoving.current = false
    }
  }
  return {
    ...{ draft, change, problem, done, move },
    refuse: (why: string) => {
      setDone('')
      setProblem(new Error(why))
    },
    choosePart: (part: string) => change({ part }),
    takeBack: async () => {
      const last = made.current.at(-1)
      if (last === undefined)
        throw new Error('Nothing was moved here since the start. Take it back in the ledger of the part.')
      const reason = 'taken back at once'
      const { movement } = await ask('stock-ledger.reverse-movement', { movementId: last, reason, ...signed })
      made.current.pop()
      setDone('')
      await refresh()
      return `Taken back: ${wordMovement(movement)}.`
    },
  }
}

export type Moves = ReturnType<typeof useMoves>
