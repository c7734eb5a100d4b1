import { afterEach, beforeEach, expect, test } from 'vitest'
import { raiseCatalogueVersion } from '../../../../electron/catalogue/catalogue-state-queries.ts'
import { RecentLists } from '../../../../electron/catalogue/model-lists/recent-lists.ts'
import { type DatabaseHandle, inTransaction } from '../../../../electron/database/handles.ts'
import { inMemory, openDatabase } from '../../../../electron/database/open-database.ts'

let database: DatabaseHandle
let made: number[]
let lists: RecentLists<string>
beforeEach(() => {
  database = openDatabase(inMemory)
  made = []
  lists = new RecentLists()
})
afterEach(() => database.close())

const read = (name: number) =>
  lists.read(database, String(name), async () => {
    made.push(name)
    return `list ${name}`
  })
const changeCatalogue = () => inTransaction(database, raiseCatalogueVersion)

test('a list that was just asked for is not made again', async () => {
  expect([await read(1), await read(1)]).toEqual(['list 1', 'list 1'])
  expect(made).toEqual([1])
})

test('two who ask at once wait for the same list', async () => {
  await Promise.all([read(1), read(1)])
  expect(made).toEqual([1])
})

test('after the catalogue changed it is made anew', async () => {
  await read(1)
  changeCatalogue()
  await read(1)
  expect(made).toEqual([1, 1])
})

test('one that a change overtook while it was made is not given', async () => {
  const answers = ['before', 'after']
  const answer = await lists.read(database, '1', async () => {
    const list = answers.shift() ?? 'too often'
    if (list === 'before') changeCatalogue()
    return list
  })
  expect(answer).toBe('after')
})

test('the one that nobody asked for longest is forgotten', async () => {
  for (const name of [1, 2, 3, 4, 1, 5, 1, 2]) await read(name)
  expect(made).toEqual([1, 2, 3, 4, 5, 2])
})

test('one that could not be made is tried again', async () => {
  await expect(lists.read(database, '1', () => Promise.reject(new Error('no disk')))).rejects.toThrow(
    'no disk',
  )
  expect(await read(1)).toBe('list 1')
})
