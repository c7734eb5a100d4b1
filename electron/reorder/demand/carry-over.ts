/** The number that each part's history and stock count for today, by the replacements that hold always and are unambiguous. */
export function followSuccessors(successors: ReadonlyMap<number, number>): (partId: number) => number {
  const known = new Map<number, number>()
  return partId => {
    const before = known.get(partId)
    if (before !== undefined) return before
    // Two parts that each replace the other would lead round and round: the first met again is where it ends.
    const passed = new Set([partId])
    let current = partId
    for (;;) {
      const next = successors.get(current)
      if (next === undefined || passed.has(next)) break
      passed.add(next)
      current = next
    }
    known.set(partId, current)
    return current
  }
}
