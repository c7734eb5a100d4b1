import { useMutation, useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import { askAnew } from './ask-anew.ts'

/** Something that is said of a part or a job from here, after which the week is proposed anew. */
export interface PartChange {
  /** What holds now, in a sentence. */
  readonly words: string
  readonly make: () => Promise<unknown>
  readonly takeBack: () => Promise<unknown>
}

/**
 * Makes such changes and keeps the way back from the last one, since the line it was made in may be gone from the
 * proposal then. Quantities that were typed stay.
 */
export function usePartChanges() {
  const queries = useQueryClient()
  const [last, setLast] = useState<PartChange | null>(null)
  const act = useMutation({
    mutationFn: ({ change, isBack }: { readonly change: PartChange; readonly isBack: boolean }) =>
      isBack ? change.takeBack() : change.make(),
    networkMode: 'always',
    onSuccess: async (_done, { change, isBack }) => {
      setLast(isBack ? null : change)
      await askAnew(queries)
    },
  })
  return {
    ...{ last, problem: act.error, isBusy: act.isPending },
    change: (change: PartChange) => act.mutate({ change, isBack: false }),
    takeBack: () => {
      if (last !== null) act.mutate({ change: last, isBack: true })
    },
  }
}

export type PartChanges = ReturnType<typeof usePartChanges>
