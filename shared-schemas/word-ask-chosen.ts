import type { AskChosen, AskedReading } from './fit-check.ts'

/** Whether fewer readings might do. Of a single one nothing need be said: without it nothing is decided. */
export function wordAskChosen(ask: readonly AskedReading[], chosen: AskChosen | null): string[] {
  if (chosen === 'greedy') return ['Chosen one by one, the most telling first; fewer readings might do.']
  const readings = ask.reduce((count, { positions = [] }) => count + Math.max(positions.length, 1), 0)
  return chosen === null || readings < 2
    ? []
    : ['No fewer readings would do: every smaller choice was tried.']
}
