import Fuse from 'fuse.js'
import { normaliseNumber } from '../catalogue/normalise-number.ts'

/** The catalogue's brands as people write them. */
export interface KnownBrands {
  /** The brand of this very name, whatever its case and separators. */
  named(typed: string): string | undefined
  /** The one brand that a word differs from by a single letter. */
  almostNamed(key: string): string | undefined
  /** The likeliest brands for a name that is none, best first. */
  nearest(typed: string): string[]
}

export function listKnownBrands(brands: readonly string[]): KnownBrands {
  const byKey = new Map(brands.map(brand => [normaliseNumber(brand), brand]))
  const keyed = [...byKey].map(([key, brand]) => ({ key, brand }))
  const strict = new Fuse(keyed, {
    keys: ['key'],
    includeScore: true,
    threshold: oneInFive,
    ignoreLocation: true,
  })
  const loose = new Fuse(keyed, { keys: ['key'], threshold: 0.5, ignoreLocation: true })
  return {
    named: typed => byKey.get(normaliseNumber(typed)),
    almostNamed(key) {
      if (key.length < shortestMisspelt || !/^\p{L}+$/u.test(key)) return undefined
      const alike = strict.search(key).filter(({ item }) => Math.abs(item.key.length - key.length) <= 1)
      return alike.length === 1 ? alike[0]?.item.brand : undefined
    },
    nearest: typed => loose.search(normaliseNumber(typed), { limit: 5 }).map(({ item }) => item.brand),
  }
}

/** A shorter word is too often a whole different word one letter away. */
const shortestMisspelt = 5
/** fuse.js scores an error by the share of the word that it is: one in five letters or fewer. */
const oneInFive = 0.21
