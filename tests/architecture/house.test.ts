import { readdirSync } from 'node:fs'
import path from 'node:path'
import { expect, test } from 'vitest'
import { readSource } from './read-imports.ts'
import { listSources, productFolders, programFolder } from './source-files.ts'

const sources = listSources([...productFolders, 'tests'])

test('the top level holds what the map names and nothing else', () => {
  const map = [
    'DEVELOPERS.md',
    'LICENSE',
    'README.md',
    'biome.json',
    'electron',
    'package-lock.json',
    'package.json',
    'renderer',
    'sample-catalogue',
    'shared-schemas',
    'tests',
    'tsconfig.json',
  ]
  // What installing, building, packaging and checking leave behind, and dotfiles, are no part of the house.
  const left = ['node_modules', 'dist', 'release']
  const found = readdirSync(programFolder).filter(
    name => !name.startsWith('.') && !left.includes(name) && !name.endsWith('.tsbuildinfo'),
  )
  expect(found.sort()).toEqual(map.sort())
})

test('a folder has no barrel; the one index is the list of requests', () => {
  const indexes = sources.map(({ file }) => file).filter(file => /\/index\.\w+$/.test(file))
  expect(indexes).toEqual(['shared-schemas/index.ts'])
})

test('no folder is called utils, helpers or common', () => {
  const vague = sources.filter(({ file }) =>
    path.posix
      .dirname(file)
      .split('/')
      .some(name => /^(utils?|helpers?|common|misc|lib)$/.test(name)),
  )
  expect(vague.map(({ file }) => file)).toEqual([])
})

test('files are named in kebab case', () => {
  const odd = sources.filter(
    ({ file }) => !/^[a-z0-9]+(-[a-z0-9]+)*(\.(test|config|d))?\.\w+$/.test(path.posix.basename(file)),
  )
  expect(odd.map(({ file }) => file)).toEqual([])
})

test('nothing is cast to any, and no type error is silenced', { timeout: 30_000 }, () => {
  expect(
    sources.filter(({ file, text }) => findShortcut(file, text) !== undefined).map(({ file }) => file),
  ).toEqual([])
})

test('the search for shortcuts finds each of them', () => {
  expect(findShortcut('a.ts', 'const a = b as any')).toBe('any')
  expect(findShortcut('a.ts', 'function f(a: any) { return a }')).toBe('any')
  expect(findShortcut('a.ts', `// @ts-${'ignore'}\nconst a = 1`)).toBe('a silenced type error')
  expect(findShortcut('a.ts', `// ${'TODO'} later\nconst a = 1`)).toBe('work left undone')
  expect(findShortcut('a.ts', `// biome-${'ignore'} lint/a/b:\nconst a = 1`)).toBe(
    'a suppressed rule without its reason',
  )
  expect(findShortcut('a.ts', '// many words, and any number of them\nconst any = 1')).toBeUndefined()
})

function findShortcut(file: string, text: string): string | undefined {
  const { comments, saysAny } = readSource(file, text)
  if (saysAny) return 'any'
  if (comments.some(comment => /@ts-(ignore|expect-error|nocheck)/.test(comment)))
    return 'a silenced type error'
  if (comments.some(comment => /\b(TODO|FIXME|XXX)\b/.test(comment))) return 'work left undone'
  const unreasoned = comments.some(
    comment => /biome-ignore/.test(comment) && !/biome-ignore\S* \S+: \S+/.test(comment),
  )
  return unreasoned ? 'a suppressed rule without its reason' : undefined
}
