import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { packageFolderOf, writeNotices } from '../../../electron/packaging/third-party-notices.ts'

let folder: string
beforeAll(() => {
  folder = mkdtempSync(path.join(os.tmpdir(), 'tallyplate-notices-'))
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

function makePackage(name: string, files: Readonly<Record<string, string>>): string {
  const made = path.join(folder, name)
  mkdirSync(made, { recursive: true })
  for (const [file, text] of Object.entries(files)) writeFileSync(path.join(made, file), text)
  return made
}

const about = (name: string, license?: string) => JSON.stringify({ name, version: '1.2.3', license })

test.each([
  ['/shop/node_modules/quire/lib/index.js', '/shop/node_modules/quire'],
  ['/shop/node_modules/@lathe/turn/dist/a.mjs?url', '/shop/node_modules/@lathe/turn'],
  ['/shop/node_modules/quire/node_modules/ream/a.js', '/shop/node_modules/quire/node_modules/ream'],
  ['\0/shop/node_modules/quire/a.js', '/shop/node_modules/quire'],
  ['/shop/electron/main.ts', undefined],
])('a module of %s belongs to %s', (id, expected) => {
  expect(packageFolderOf(id)).toBe(expected)
})

test('each package stands once, by name, with its licence and what its files say; the same terms stand once', () => {
  const quire = makePackage('quire', {
    'package.json': about('quire', 'MIT'),
    LICENSE: 'Quire, by its makers.\n',
  })
  const ream = makePackage('ream', {
    'package.json': about('ream', 'Apache-2.0'),
    'LICENCE.md': 'Ream terms.',
    'NOTICE.txt': 'Ream notice.',
    'README.md': 'Not told.',
  })
  const folio = makePackage('folio', {
    'package.json': about('folio', 'MIT'),
    LICENSE: 'Quire, by its makers.',
  })
  const text = writeNotices([ream, quire, folio, ream])
  const [, first = '', second = ''] = text.split(/\n=+\n(?=\S)/)
  expect(first).toMatch(/^folio 1\.2\.3 \(MIT\)\nquire 1\.2\.3 \(MIT\)\n=+\n\nQuire, by its makers\.\n/)
  expect(second).toMatch(/^ream 1\.2\.3 \(Apache-2\.0\)\n=+\n\nReam terms\.\n\nReam notice\.\n/)
  expect(text).not.toContain('Not told.')
})

test('a package that says its licence only in a file is told by that', () => {
  const filed = makePackage('filed', { 'package.json': about('filed'), LICENSE: 'Do as you like.' })
  expect(writeNotices([filed])).toContain('filed 1.2.3 (as it says)')
})

test('a package that says no licence stops the build', () => {
  const bare = makePackage('bare', { 'package.json': about('bare') })
  expect(() => writeNotices([bare])).toThrow('bare 1.2.3 says none')
})

test('the packages that the engine cannot do without are read as they are installed', () => {
  const text = writeNotices(
    ['zod', 'better-sqlite3', 'papaparse'].map(name => path.join('node_modules', name)),
  )
  for (const name of ['better-sqlite3', 'papaparse', 'zod']) {
    const { version } = JSON.parse(readFileSync(path.join('node_modules', name, 'package.json'), 'utf8')) as {
      readonly version: string
    }
    expect(text).toContain(`${name} ${version} (MIT)`)
  }
  expect(text).toMatch(/permission is hereby granted/i)
})
