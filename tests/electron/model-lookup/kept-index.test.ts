import fc from 'fast-check'
import { describe, expect, test, vi } from 'vitest'
import { raiseCatalogueVersion } from '../../../electron/catalogue/catalogue-state-queries.ts'
import { normaliseNumber } from '../../../electron/catalogue/normalise-number.ts'
import { DatabaseHandle, inTransaction, type WritableDatabase } from '../../../electron/database/handles.ts'
import { inMemory, openDatabase } from '../../../electron/database/open-database.ts'
import { currentModelIndex } from '../../../electron/model-lookup/current-model-index.ts'
import { findModels } from '../../../electron/model-lookup/find-models.ts'
import { findOpenModels } from '../../../electron/model-lookup/find-open-models.ts'
import { indexModels, type ModelIndex } from '../../../electron/model-lookup/index-models.ts'
import { keepIndex } from '../../../electron/model-lookup/keep-index.ts'
import { countChanges, readKeptIndex } from '../../../electron/model-lookup/kept-index-queries.ts'
import {
  readCatalogueNumbers,
  readChangedNumbers,
} from '../../../electron/model-lookup/model-index-queries.ts'

const brands = ['Ostrel', 'Brennick', 'Korrel']
const numbers = [
  ...['ODW4512/01', 'ODW4512/02', 'ODW-4512', 'OWM4512/02', 'ODW4513/01', 'OD W45121', '53310754-06'],
  ...[
    '53310754-07',
    'S3310754',
    'LÖ-99 ЖΩ',
    'LÖ-98',
    'wx4547c',
    'WX4547/C',
    'AB12',
    'A1BK',
    'KR-4471-22-XA-900817-REV-3B-EXPORT-NORTH',
  ],
]
const names = ['Aqualane 44', 'Aqua Lane 44', 'Aqualane 45', 'Ostrel Fjord', 'Fjord', 'Åse 7']
const questions = [
  ...[
    'ODW4512/01',
    'ODW4512',
    '4512',
    'OWD4512/01',
    'ODW45I2/03',
    'ODW4?12',
    '5331075406',
    '533I0754',
    '331075',
  ],
  ...[
    'LO99',
    'LÖ97',
    'WX4547',
    'WX4S47C',
    'A1B2',
    'AB1Z',
    'aqualane 44',
    'aqualane 4S',
    'aqualan 45',
    'fjord',
    'Ostrel fjord',
  ],
  ...['ASE7', 'KR447122XA900871REV3BEXPORT', 'Brennick WX4547/C', 'ZZTOP99'],
]

/** One thing that a load may do to a catalogue of these, by places in the lists above. */
type Change =
  | readonly ['add', brand: number, number: number]
  | readonly ['renumber', brand: number, number: number, other: number]
  | readonly ['retype', brand: number, number: number]
  | readonly ['remove', brand: number, number: number]
  | readonly ['name', brand: number, number: number, name: number]
  | readonly ['unname', brand: number, number: number, name: number]
  | readonly ['rename', name: number, other: number]

const place = fc.nat(numbers.length - 1)
const brand = fc.nat(brands.length - 1)
const name = fc.nat(names.length - 1)
const change: fc.Arbitrary<Change> = fc.oneof(
  { weight: 4, arbitrary: fc.tuple(fc.constant('add' as const), brand, place) },
  fc.tuple(fc.constant('renumber' as const), brand, place, place),
  fc.tuple(fc.constant('retype' as const), brand, place),
  fc.tuple(fc.constant('remove' as const), brand, place),
  { weight: 2, arbitrary: fc.tuple(fc.constant('name' as const), brand, place, name) },
  fc.tuple(fc.constant('unname' as const), brand, place, name),
  fc.tuple(fc.constant('rename' as const), name, name),
)
/** A load that is kept, one that is taken back as a whole, or the laying out of a new index. */
const step = fc.record({
  changes: fc.array(change, { maxLength: 8 }),
  ends: fc.constantFrom('kept', 'kept', 'kept', 'undone', 'laid out'),
})

test('after any loads and undos, the kept index with what changed since answers as one laid out anew', () => {
  let layered = 0
  fc.assert(
    fc.property(fc.array(change, { maxLength: 30 }), fc.array(step, { maxLength: 5 }), (first, steps) => {
      const database = openTestDatabase()
      load(database, first)
      keepIndex(database)
      for (const { changes, ends } of steps) {
        if (ends === 'undone') expect(() => load(database, changes, { fails: true })).toThrow('taken back')
        else load(database, changes)
        if (ends === 'laid out') keepIndex(database)
        const held = currentModelIndex(database)
        if (held.layers.length > 1) layered += 1
        expect(answers(held)).toEqual(answers(indexModels(readCatalogueNumbers(database))))
        expect(answers(openedAgain(database))).toEqual(answers(held))
      }
      database.close()
    }),
    { numRuns: 25 },
  )
  // Else nothing would have been tried but indexes laid out anew.
  expect(layered).toBeGreaterThan(25)
}, 60_000)

describe('what is noted, and when', () => {
  test('nothing is noted while no index is kept', () => {
    const database = openTestDatabase()
    load(database, [['add', 0, 0]])
    expect(countChanges(database)).toBe(0)
    expect(readKeptIndex(database)).toBeUndefined()
  })

  test('each model is noted once, whatever changed of it, and forgotten when another index is kept', () => {
    const database = openTestDatabase()
    load(database, [
      ['add', 0, 0],
      ['add', 0, 1],
    ])
    keepIndex(database)
    load(database, [
      ['retype', 0, 0],
      ['name', 0, 0, 1],
      ['name', 0, 0, 2],
      ['unname', 0, 0, 1],
      ['add', 1, 3],
    ])
    expect(countChanges(database)).toBe(2)
    const before = readKeptIndex(database)
    keepIndex(database)
    expect(countChanges(database)).toBe(0)
    expect(readKeptIndex(database)?.stamp).not.toBe(before?.stamp)
  })

  test('a change that no trigger saw is betrayed by the number of models', () => {
    const database = openTestDatabase()
    load(database, [
      ['add', 0, 0],
      ['add', 0, 3],
      ['add', 1, 6],
    ])
    keepIndex(database)
    database.connection.exec('DROP TRIGGER model_index_notes_model_delete')
    load(database, [
      ['remove', 0, 3],
      ['retype', 1, 6],
    ])
    expect(findOpenModels(currentModelIndex(database), { text: 'OWM4512' }).outcome).not.toBe('exact')
  })

  test('an index of another format is not read', () => {
    const database = openTestDatabase()
    load(database, [['add', 0, 0]])
    keepIndex(database)
    database.connection.exec('UPDATE model_index SET format = 0')
    expect(readKeptIndex(database)).toBeUndefined()
    expect(findOpenModels(currentModelIndex(database), { text: 'ODW4512/01' }).outcome).toBe('exact')
  })

  test('a load that changes no printed number leaves nothing to read beside the index', () => {
    const database = openTestDatabase()
    load(database, [['add', 0, 0]])
    keepIndex(database)
    inTransaction(database, writable => {
      writable.run("UPDATE model SET made_from = '2014'")
      raiseCatalogueVersion(writable)
    })
    expect(countChanges(database)).toBe(0)
    expect(currentModelIndex(database).catalogueVersion).toBe(2)
  })
})

test('what changed is read by its models alone', () => {
  const database = openTestDatabase()
  const plans: string[] = []
  const read = database.tuples.bind(database)
  vi.spyOn(database, 'tuples').mockImplementation((sql, ...bound) => {
    plans.push(database.explain(sql, ...bound))
    return read(sql, ...bound)
  })
  readChangedNumbers(database)
  const [, ofModels, ofSalesNames] = plans
  expect(ofModels).toContain('SEARCH model USING INTEGER PRIMARY KEY')
  expect(ofSalesNames).toContain('SEARCH sales_name USING INDEX sales_name_of_model')
})

function openTestDatabase(): DatabaseHandle {
  const database = openDatabase(inMemory)
  inTransaction(database, writable => {
    brands.forEach((brand, at) => {
      writable.run('INSERT INTO brand VALUES (?, ?, ?)', at + 1, brand, normaliseNumber(brand))
    })
  })
  return database
}

function load(database: DatabaseHandle, changes: readonly Change[], { fails = false } = {}): void {
  inTransaction(database, writable => {
    for (const change of changes) apply(writable, change)
    raiseCatalogueVersion(writable)
    if (fails) throw new Error('taken back')
  })
}

function apply(writable: WritableDatabase, change: Change): void {
  if (change[0] === 'rename') {
    writable.run(
      'UPDATE OR IGNORE sales_name SET sales_name = ?, sales_key = ? WHERE sales_key = ?',
      ...named(change[2]),
      named(change[1])[1],
    )
    return
  }
  const brandId = change[1] + 1
  const key = normaliseNumber(numbers[change[2]] ?? '')
  const ofModel = 'WHERE brand_id = ? AND model_key = ?'
  switch (change[0]) {
    case 'add':
      writable.run(
        "INSERT OR IGNORE INTO model (brand_id, model_number, model_key, appliance_type) VALUES (?, ?, ?, 'washer')",
        brandId,
        numbers[change[2]] ?? '',
        key,
      )
      return
    case 'renumber': {
      const other = numbers[change[3]] ?? ''
      writable.run(
        `UPDATE OR IGNORE model SET model_number = ?, model_key = ? ${ofModel}`,
        other,
        normaliseNumber(other),
        brandId,
        key,
      )
      return
    }
    case 'retype':
      writable.run(`UPDATE model SET appliance_type = 'oven' ${ofModel}`, brandId, key)
      return
    case 'remove':
      writable.run(
        `DELETE FROM sales_name WHERE model_id IN (SELECT model_id FROM model ${ofModel})`,
        brandId,
        key,
      )
      writable.run(`DELETE FROM model ${ofModel}`, brandId, key)
      return
    case 'name':
      writable.run(
        `INSERT OR IGNORE INTO sales_name (brand_id, sales_name, sales_key, model_id)
         SELECT brand_id, ?, ?, model_id FROM model ${ofModel}`,
        ...named(change[3]),
        brandId,
        key,
      )
      return
    case 'unname':
      writable.run(
        `DELETE FROM sales_name WHERE sales_key = ? AND model_id IN (SELECT model_id FROM model ${ofModel})`,
        named(change[3])[1],
        brandId,
        key,
      )
  }
}

function named(at: number): [salesName: string, key: string] {
  const salesName = names[at] ?? ''
  return [salesName, normaliseNumber(salesName)]
}

/** All that is shown of every question. */
function answers(index: ModelIndex): unknown[] {
  const readFacts = () => ({ salesNames: [], madeFrom: null, madeTo: null })
  return questions.flatMap(text => [
    findModels({ index, readFacts }, { text, top: 5 }),
    findOpenModels(index, { text, brand: 'Brennick' }),
  ])
}

/** As another program would read it: the kept index out of the database. */
function openedAgain({ connection }: DatabaseHandle): ModelIndex {
  return currentModelIndex(new DatabaseHandle(connection))
}
