import path from 'node:path'
import { placeOf } from './arrows.ts'
import { readSource } from './read-imports.ts'

/** What is wrong with the imports of one source, each as a sentence that says what to do instead. */
export function findWrongArrows(file: string, text: string): string[] {
  const place = placeOf(file)
  if (place === undefined)
    return [
      `${file} is in no place that tests/architecture/arrows.ts draws: put it in one, or draw its place.`,
    ]
  const { imports, unreadable } = readSource(file, text)
  const wrong = imports.flatMap(({ specifier, form }) => {
    const isOwn = specifier.startsWith('.')
    if (!isOwn)
      return place.packages.some(allowed => allowed.test(specifier))
        ? []
        : [`${file}: ${place.name} does not use the package ${specifier} (${form}).`]
    const target = path.posix.join(path.posix.dirname(file), specifier.replace(/\?.*$/, ''))
    const other = placeOf(target)
    if (other?.name === place.name || (other && place.mayImport.includes(other.name))) return []
    return [
      `${file}: there is no arrow from ${place.name} to ${other?.name ?? target} (${form}). Have application.ts hand in what is needed, or draw the arrow in DEVELOPERS.md, arrows.ts and biome.json, and say why.`,
    ]
  })
  return [...wrong, ...unreadable.map(what => `${file}: ${what}; name the module plainly.`)]
}
