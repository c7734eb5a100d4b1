import Fuse from 'fuse.js'

/** What a family can be called by. */
export interface NamedFamily {
  readonly name: string
  readonly function: string
  readonly partWords: readonly string[]
}

/**
 * The families that words such as `drain`, `door seal` or `dor lok` may mean, in the order given. Every word must be
 * found, so that a second word narrows.
 */
export function findFamilies<Family extends NamedFamily>(
  families: readonly Family[],
  words: string,
): Family[] {
  const search = new Fuse(families, {
    keys: ['name', 'function', 'partWords'],
    threshold: 0.25,
    ignoreLocation: true,
    ignoreDiacritics: true,
  })
  const found = words
    .trim()
    .split(/\s+/)
    .map(word => new Set(search.search(word).map(({ item }) => item)))
  return families.filter(family => found.every(ofWord => ofWord.has(family)))
}
