import type { QueryClient } from '@tanstack/react-query'

/** Asks anew for what is reckoned from history and settings, after either was changed. */
export async function askAnew(queries: QueryClient): Promise<void> {
  const reckoned = [
    'reorder.read-part',
    'proposal.explain-part',
    'proposal.make-proposal',
    'reorder.play-last-year',
  ]
  await Promise.all(reckoned.map(name => queries.invalidateQueries({ queryKey: [name] })))
}
