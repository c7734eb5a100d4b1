/** One part replaces another, one way or both; line 0 stands in the database already. */
export interface Replacement {
  readonly old: number
  readonly new: number
  readonly way: 'one' | 'both'
  readonly line: number
}

/**
 * The newly stated replacements that lead back to where they began, each with a loop that it is part of, as parts from
 * and to the same one. Parts that replace each other both ways are one and the same for this. A pair that is stated
 * one way and both ways loops too. No row of a loop is more wrong than another, so all that are new are named.
 */
export function findLoopedReplacements(
  all: readonly Replacement[],
): ReadonlyMap<Replacement, readonly number[]> {
  const looped = findOnShortestLoops(all)
  if (looped.size === 0) return looped
  // With these rows gone, a longer loop may have become the shortest.
  const others = findLoopedReplacements(all.filter(row => !looped.has(row)))
  return new Map([...looped, ...others])
}

function findOnShortestLoops(all: readonly Replacement[]): Map<Replacement, readonly number[]> {
  const steps = listSteps(all)
  const looped = new Map<Replacement, readonly number[]>()
  for (const { old, new: next, way } of all) {
    if (way !== 'one') continue
    const back = findPath(steps, next, old)
    if (back === undefined) continue
    const loop = [old, ...back]
    for (const row of all) if (row.line > 0 && !looped.has(row) && isOnLoop(row, loop)) looped.set(row, loop)
  }
  return looped
}

function listSteps(all: readonly Replacement[]): Map<number, Set<number>> {
  const steps = new Map<number, Set<number>>()
  const add = (from: number, to: number) => steps.set(from, (steps.get(from) ?? new Set()).add(to))
  for (const row of all) {
    add(row.old, row.new)
    if (row.way === 'both') add(row.new, row.old)
  }
  return steps
}

/** The shortest way along the steps, both ends named; undefined where there is none. */
function findPath(
  steps: ReadonlyMap<number, ReadonlySet<number>>,
  from: number,
  to: number,
): number[] | undefined {
  const cameFrom = new Map<number, number>([[from, from]])
  for (const part of cameFrom.keys()) {
    if (part === to) return retrace(cameFrom, from, to)
    for (const next of steps.get(part) ?? []) if (!cameFrom.has(next)) cameFrom.set(next, part)
  }
  return undefined
}

function retrace(cameFrom: ReadonlyMap<number, number>, from: number, to: number): number[] {
  const path = [to]
  for (let part = to; part !== from; ) {
    part = cameFrom.get(part) ?? from
    path.unshift(part)
  }
  return path
}

function isOnLoop(row: Replacement, loop: readonly number[]): boolean {
  return loop.some((part, at) => {
    const next = loop[at + 1]
    if (next === undefined) return false
    return (
      (row.old === part && row.new === next) || (row.way === 'both' && row.old === next && row.new === part)
    )
  })
}
