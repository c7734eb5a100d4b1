import Fuse from 'fuse.js'
import type { FittingFamily } from '../../shared-schemas/fit-check.ts'

/** Families in which every word is found, slips of the finger forgiven; their order stays. */
export function filterFamilies(families: readonly FittingFamily[], words: string): readonly FittingFamily[] {
  const wanted = words.trim().split(/\s+/).filter(Boolean)
  if (wanted.length === 0) return families
  const index = new Fuse(families.map(wordsOf), options)
  const found = wanted.map(word => new Set(index.search(word).map(({ refIndex }) => refIndex)))
  return families.filter((_, at) => found.every(places => places.has(at)))
}

const options = {
  ignoreLocation: true,
  ignoreDiacritics: true,
  threshold: 0.34,
  keys: ['name', 'function', 'parts'],
}

function wordsOf({ name, function: does, parts }: FittingFamily) {
  return {
    name,
    function: does,
    parts: parts.flatMap(part => [part.partNumber, part.description, part.maker]),
  }
}
