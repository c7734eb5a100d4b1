import Fuse from 'fuse.js'

/** What a family can be called by. */
export interface NamedFamily {
  readonly name: string
  readonly function: string
  readonly partWords: readonly string[]
}

/**
 * The families that words such as `drain`, `door seal` or `dor lock` may mean, in the order given. A word that stands
 * somewhere as typed is taken so; only one that stands nowhere is matched loosely. Every word must be found, so that a
 * second one narrows.
 */
export function findFamilies<Family extends NamedFamily>(
  families: readonly Family[],
  words: string,
): Family[] {
  const loosely = new Fuse(families, {
    keys: ['name', 'function', 'partWords'],
    threshold: 0.34,
    ignoreLocation: true,
    ignoreDiacritics: true,
  })
  const found = words
    .trim()
    .toLowerCase()
    .split(/\s+/)
    .map(word => {
      const asTyped = families.filter(family => textOf(family).includes(word))
      return new Set(asTyped.length > 0 ? asTyped : loosely.search(word).map(({ item }) => item))
    })
  return families.filter(family => found.every(ofWord => ofWord.has(family)))
}

function textOf({ name, function: does, partWords }: NamedFamily): string {
  return [name, does, ...partWords].join('\n').toLowerCase()
}
