import type { Caution } from '../../shared-schemas/fit-check.ts'
import type { FitDecision } from './decide-fit.ts'

/** Where a part that would be sold must not go: it fits this appliance, and only in its other places. */
export function cautionPositions({ verdict, answers }: FitDecision): Caution[] {
  if (verdict !== 'fits' && verdict !== 'fits-with-changes') return []
  const sources = new Map<string, Set<string>>()
  for (const { position, source } of answers.flatMap(({ forbiddenThere }) => forbiddenThere)) {
    if (position === null) throw new Error('what forbids a part everywhere leaves no yes')
    sources.set(position, (sources.get(position) ?? new Set()).add(source))
  }
  return [...sources].map(([position, saying]) => ({
    code: 'not-in-position',
    text: `Do not fit it in the position ${position}: ${[...saying].join(', ')}.`,
  }))
}
