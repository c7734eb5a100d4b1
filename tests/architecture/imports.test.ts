import { expect, test } from 'vitest'
import { findWrongArrows } from './find-wrong-arrows.ts'
import { readSource } from './read-imports.ts'
import { listSources, productFolders } from './source-files.ts'

const sources = listSources(productFolders)

test('every import of every source follows an arrow', () => {
  expect(sources.length).toBeGreaterThan(100)
  expect(sources.flatMap(({ file, text }) => findWrongArrows(file, text))).toEqual([])
})

test('only the window and its preload script know Electron', () => {
  const knowing = sources
    .filter(({ file, text }) =>
      readSource(file, text).imports.some(({ specifier }) => specifier === 'electron'),
    )
    .map(({ file }) => file)
  expect(knowing).toEqual(['electron/main.ts', 'electron/preload.ts'])
})

test('no file passes on what is another’s: one imports the file one needs', () => {
  const passing = sources.filter(({ file, text }) =>
    readSource(file, text).imports.some(({ form }) => form === 'export from'),
  )
  expect(passing.map(({ file }) => file)).toEqual([])
})

test('every form of import is read', () => {
  const text = `
    import './a.ts'
    import { b } from './b.ts'
    import type { C } from './c.ts'
    export * from './d.ts'
    export { e } from './e.ts'
    export type { F } from './f.ts'
    const g = await import('./g.ts')
    let h: import('./h.ts').H
    const i = createRequire(import.meta.url)('./i.cjs')
    const j = require('./j.cjs')
    import k = require('./k.cjs')
    function l() { return [1].map(async () => (await import('./l.ts')).l) }
  `
  const { imports, unreadable } = readSource('all-forms.ts', text)
  expect(imports.map(({ specifier }) => specifier).sort()).toEqual(
    ['a.ts', 'b.ts', 'c.ts', 'd.ts', 'e.ts', 'f.ts', 'g.ts', 'h.ts', 'i.cjs', 'j.cjs', 'k.cjs', 'l.ts'].map(
      name => `./${name}`,
    ),
  )
  expect(unreadable).toEqual([])
})

function check(given: { file: string; text: string }, expected: RegExp | 'allowed'): void {
  const wrong = findWrongArrows(given.file, given.text)
  if (expected === 'allowed') expect(wrong).toEqual([])
  else expect(wrong.join('\n')).toMatch(expected)
}

test.each<[string, string, RegExp | 'allowed']>([
  [
    'electron/catalogue/a.ts',
    "import { b } from '../fit-check/decide-fit.ts'",
    /no arrow from catalogue to fit-check/,
  ],
  ['electron/fit-check/a.ts', "import { b } from '../catalogue/part-queries.ts'", 'allowed'],
  [
    'electron/catalogue/a.ts',
    "await import('../stock-ledger/x.ts')",
    /no arrow from catalogue to stock-ledger/,
  ],
  ['electron/catalogue/a.ts', "let x: import('../hosts/engine.ts').X", /no arrow from catalogue to hosts/],
  [
    'electron/catalogue/a.ts',
    "import { o } from '../database/open-database.ts'",
    /no arrow from catalogue to database/,
  ],
  ['electron/catalogue/a.ts', "import { o } from '../database/handles.ts'", 'allowed'],
  [
    'electron/catalogue/a.ts',
    "createRequire(import.meta.url)('electron')",
    /does not use the package electron/,
  ],
  [
    'renderer/counter/a.tsx',
    "import type { S } from '../../electron/application.ts'",
    /no arrow from renderer/,
  ],
  ['renderer/counter/a.tsx', "import path from 'node:path'", /does not use the package node:path/],
  ['shared-schemas/a.ts', "import { b } from '../renderer/b.ts'", /no arrow from shared-schemas to renderer/],
  ['electron/preload.ts', "import { b } from './hosts/engine.ts'", /no arrow from preload to hosts/],
  ['electron/hosts/a.ts', "import { b } from '../application.ts'", 'allowed'],
  [
    'electron/hosts/a.ts',
    "import { b } from '../fit-check/decide-fit.ts'",
    /no arrow from hosts to fit-check/,
  ],
  ['electron/hosts/a.ts', 'await import(whatever)', /name the module plainly/],
  ['electron/utils/a.ts', '', /is in no place/],
])('%s with %s: %s', (file, text, expected) => check({ file, text }, expected))
