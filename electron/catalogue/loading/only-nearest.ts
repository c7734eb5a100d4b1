/** So many letters may be wrong, missing or too many: one in a short word, two in a longer one. */
const slips = (word: string) => (word.length < 6 ? 1 : 2)

/** The one word that this may be a slip of; undefined where there is none, or several. */
export function findOnlyNearest(typed: string, words: readonly string[]): string | undefined {
  const near = words.filter(word => countSlips(typed, word) <= slips(word))
  return near.length === 1 ? near[0] : undefined
}

/** The least number of letters to put in, take out or change (V. Levenshtein, 1965), row by row of the usual table. */
function countSlips(one: string, other: string): number {
  let row = Array.from({ length: other.length + 1 }, (_, at) => at)
  for (const [at, letter] of [...one].entries()) {
    const next = [at + 1]
    for (const [place, otherLetter] of [...other].entries()) {
      const changed = (row[place] ?? 0) + Number(letter !== otherLetter)
      next.push(Math.min(changed, (row[place + 1] ?? 0) + 1, (next[place] ?? 0) + 1))
    }
    row = next
  }
  return row.at(-1) ?? 0
}
