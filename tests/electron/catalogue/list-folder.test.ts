import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { listFolder } from '../../../electron/catalogue/list-folder.ts'
import { Refusal } from '../../../electron/requests/refusal.ts'

let home: string
beforeAll(() => {
  home = mkdtempSync(path.join(os.tmpdir(), 'tallyplate-home-'))
  mkdirSync(path.join(home, 'Lists', 'march'), { recursive: true })
  mkdirSync(path.join(home, '.settings'))
  writeFileSync(path.join(home, 'Lists', 'models.csv'), 'brand\n')
  writeFileSync(path.join(home, 'Lists', 'Preise 2.xlsx'), 'PK')
  writeFileSync(path.join(home, 'Lists', 'Preise 10.TXT'), 'abc')
  writeFileSync(path.join(home, 'Lists', 'letter.pdf'), 'no list')
  symlinkSync(path.join(home, 'nowhere'), path.join(home, 'Lists', 'gone.csv'))
})
afterAll(() => rmSync(home, { recursive: true, force: true }))

const namesAt = async (typed: string, most = 200) =>
  (await listFolder({ typed, most }, home)).entries.map(({ name }) => name)

describe('what is offered', () => {
  test.each([
    ['nothing typed: the own folder, without what the system keeps', '', ['Lists']],
    ['its own sign', '~', ['Lists']],
    ['a folder: what can be loaded from it, in the order of the figures', 'Lists/', all()],
    ['from its sign on', '~/Lists/', all()],
    ['the beginning of a name, in any case', 'Lists/pre', ['Preise 2.xlsx', 'Preise 10.TXT']],
    ['in quotation marks, as copied', '"Lists/mo"', ['models.csv']],
    ['what begins with a point, once asked for', '.se', ['.settings']],
    ['a name that nothing begins with', 'Lists/zz', []],
  ])('%s', async (_title, typed, expected) => {
    expect(await namesAt(typed)).toEqual(expected)
  })

  function all(): string[] {
    return ['march', 'models.csv', 'Preise 2.xlsx', 'Preise 10.TXT']
  }

  test('a few, and how many more there are', async () => {
    const { entries, left } = await listFolder({ typed: 'Lists/', most: 1 }, home)
    expect({ names: entries.map(({ name }) => name), left }).toEqual({ names: ['march'], left: 3 })
  })

  test('a folder ends as a folder does, and a file has its kind and size', async () => {
    const { entries } = await listFolder({ typed: 'Lists/', most: 3 }, home)
    expect(entries).toEqual([
      { path: path.join(home, 'Lists', 'march') + path.sep, name: 'march', kind: 'folder', bytes: null },
      { path: path.join(home, 'Lists', 'models.csv'), name: 'models.csv', kind: 'catalogue-file', bytes: 6 },
      {
        path: path.join(home, 'Lists', 'Preise 2.xlsx'),
        name: 'Preise 2.xlsx',
        kind: 'supplier-file',
        bytes: 2,
      },
    ])
  })
})

describe('what the path names as it stands', () => {
  test.each([
    ['a folder', 'Lists', { kind: 'folder', catalogueFiles: 1 }],
    ['a file of ours', 'Lists/models.csv', { kind: 'catalogue-file', catalogueFiles: 0 }],
    ['any other list', 'Lists/Preise 2.xlsx', { kind: 'supplier-file', catalogueFiles: 0 }],
    ['no list', 'Lists/letter.pdf', null],
    ['nothing', 'Lists/mod', null],
    ['a link that leads nowhere', 'Lists/gone.csv', null],
  ])('%s', async (_title, typed, expected) => {
    const { named } = await listFolder({ typed, most: 200 }, home)
    if (expected === null) expect(named).toBeNull()
    else expect(named).toEqual({ ...expected, path: path.join(home, typed) })
  })
})

test('a folder that is not there is refused by its name', async () => {
  const asked = listFolder({ typed: 'Attic/li', most: 200 }, home)
  await expect(asked).rejects.toThrow(Refusal)
  await expect(asked).rejects.toMatchObject({
    problem: {
      code: 'file-unreadable',
      file: path.join(home, 'Attic'),
      why: 'there is no such file or folder',
    },
  })
})
