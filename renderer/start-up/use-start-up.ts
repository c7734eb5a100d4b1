import { useQuery } from '@tanstack/react-query'
import type { StartUp } from '../../shared-schemas/application.ts'
import { AskProblem } from '../bridge/ask-problem.ts'
import { ask } from '../bridge/client.ts'

/** Asks again and again how far the opening is, until the shop is open or cannot be opened. */
export function useStartUp(): StartUp {
  const { data, error } = useQuery({
    queryKey: ['application.read-start-up'],
    queryFn: () => ask('application.read-start-up', {}),
    refetchInterval: query => (isSettled(query.state.data) || query.state.error !== null ? false : 150),
    staleTime: 0,
  })
  if (error !== null && !isSettled(data)) return { state: 'failed', problem: problemOf(error) }
  return data ?? { state: 'opening' }
}

function isSettled(startUp: StartUp | undefined): boolean {
  return startUp?.state === 'ready' || startUp?.state === 'failed'
}

function problemOf(error: Error) {
  // `ask` throws nothing else; anything else is a defect of this page.
  if (!(error instanceof AskProblem)) throw error
  return error.problem
}
