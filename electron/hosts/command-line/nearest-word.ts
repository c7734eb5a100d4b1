/** The known word that a mistyped one most likely meant, or nothing where none is close. */
export function findNearestWord(typed: string, known: readonly string[]): string | undefined {
  const ranked = known
    .map(word => ({ word, distance: countEdits(typed, word) }))
    .sort((one, other) => one.distance - other.distance)
  const [best] = ranked
  return best !== undefined && best.distance <= Math.max(1, Math.floor(best.word.length / 2))
    ? best.word
    : undefined
}

/** How many characters must be put in, taken out or changed: the Levenshtein distance, row by row. */
function countEdits(one: string, other: string): number {
  let row = Array.from({ length: other.length + 1 }, (_, at) => at)
  for (const [line, character] of [...one].entries()) {
    const next = [line + 1]
    for (let at = 1; at <= other.length; at += 1) {
      const changed = (row[at - 1] ?? 0) + (character === other[at - 1] ? 0 : 1)
      next.push(Math.min(changed, (row[at] ?? 0) + 1, (next[at - 1] ?? 0) + 1))
    }
    row = next
  }
  return row[other.length] ?? 0
}
