/** Does a listed number stand for several: `*` for any characters, none included, `?` for exactly one? */
export function hasWildcard(listed: string): boolean {
  return /[*?]/.test(listed)
}

/** The models of one brand, by key, that a listed number with wildcards means. Separators count as little as in any number. */
export function matchModelPattern(listed: string, models: ReadonlyMap<string, number>): number[] {
  const pattern = keepWildcards(listed)
  const start = pattern.slice(0, pattern.search(/[*?]|$/))
  const places = [...pattern]
  const matched: number[] = []
  for (const [key, modelId] of models)
    if (key.startsWith(start) && matchesPlaces(places, [...key])) matched.push(modelId)
  return matched
}

/** A number's key in which the wildcards still stand. */
function keepWildcards(listed: string): string {
  return listed
    .normalize('NFKC')
    .toUpperCase()
    .replace(/[^\p{L}\p{N}*?]/gu, '')
}

/**
 * Lets a `*` stand for nothing at first, and for one character more whenever what follows it does not fit. Only the
 * last `*` met is ever stretched, so that a pattern full of them costs no more than its length times the key's; as a
 * regular expression it can cost hours.
 */
function matchesPlaces(pattern: readonly string[], key: readonly string[]): boolean {
  let [place, at] = [0, 0]
  let star: { readonly place: number; readonly from: number } | undefined
  while (at < key.length) {
    if (pattern[place] === '*') {
      star = { place, from: at }
      place += 1
    } else if (pattern[place] === '?' || pattern[place] === key[at]) {
      place += 1
      at += 1
    } else if (star !== undefined) {
      star = { place: star.place, from: star.from + 1 }
      place = star.place + 1
      at = star.from
    } else return false
  }
  return pattern.slice(place).every(character => character === '*')
}
