import { useMutation, useQueryClient } from '@tanstack/react-query'
import type { GivenInput } from '../../shared-schemas/index.ts'
import { ask } from '../bridge/client.ts'

/** What is loaded and how it is read; who loads, and whether it is only tried, comes later. */
export type AskedList = Pick<
  GivenInput<'catalogue.load-files'>,
  'path' | 'edition' | 'layout' | 'trialLayout' | 'encoding'
>

/**
 * The dry run, the load and the file of rejected rows: one after another, each told how it ended. A dry run
 * counts for as long as `likeness`, the same for whatever would be loaded alike, stays as it was.
 */
export function useListRun(likeness: string) {
  const client = useQueryClient()
  const trial = useMutation({
    mutationFn: ({ list }: { readonly list: AskedList; readonly likeness: string }) =>
      ask('catalogue.load-files', { ...list, dryRun: true, showChanges: mostChanges }),
    networkMode: 'always',
  })
  const load = useMutation({
    mutationFn: ({
      list,
      ...how
    }: {
      readonly list: AskedList
      readonly strict: boolean
      readonly initials: string
    }) => ask('catalogue.load-files', { ...list, ...how, showChanges: mostChanges }),
    networkMode: 'always',
    // The catalogue is another one now, on every screen.
    onSuccess: () => client.invalidateQueries(),
  })
  const saveRejected = useMutation({
    mutationFn: ({ list, rejectsFile }: { readonly list: AskedList; readonly rejectsFile: string }) =>
      ask('catalogue.load-files', { ...list, dryRun: true, rejectsFile }),
    networkMode: 'always',
  })
  const isTriedAsItStands = trial.isSuccess && trial.variables.likeness === likeness
  const isChangedSince = trial.isSuccess && !isTriedAsItStands
  return {
    trial,
    load,
    saveRejected,
    isTriedAsItStands,
    isChangedSince,
    isRunning: trial.isPending || load.isPending || saveRejected.isPending,
    forget: () => {
      trial.reset()
      load.reset()
      saveRejected.reset()
    },
  }
}

export type ListRun = ReturnType<typeof useListRun>

export const mostChanges = 500
