import type { Statement } from './part-dossier.ts'

/**
 * How many one appliance takes, from the statements that allow it: the largest count any source gives for a position,
 * added over the positions. A named position without a count takes one; null where nobody says.
 */
export function countPerAppliance(statements: readonly Statement[]): number | null {
  const atPosition = new Map<string | null, number>()
  for (const { position, quantity } of statements) {
    const said = quantity ?? (position === null ? undefined : 1)
    if (said !== undefined) atPosition.set(position, Math.max(said, atPosition.get(position) ?? 0))
  }
  const whole = atPosition.get(null)
  const byPosition = [...atPosition].filter(([position]) => position !== null)
  if (byPosition.length === 0) return whole ?? null
  const added = byPosition.reduce((sum, [, quantity]) => sum + quantity, 0)
  return Math.max(added, whole ?? 0)
}

export function positionsOf(statements: readonly Statement[]): string[] {
  return [...new Set(statements.flatMap(({ position }) => (position === null ? [] : [position])))].sort()
}
