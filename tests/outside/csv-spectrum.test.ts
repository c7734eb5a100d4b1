import { readdirSync, readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import path from 'node:path'
import { describe, expect, test } from 'vitest'
import { readCsvRows } from '../../electron/catalogue/reading/read-csv-rows.ts'

/**
 * The npm package csv-spectrum 2.0.0 (M. Ogden and others, BSD-2-Clause): CSV files beside the JSON that a reader
 * should make of them. All its files are read, each as it comes out of the package.
 *
 * One case is faulty in the set itself: `location_coordinates`. Its JSON gives the telephone number 1234567890 where
 * its CSV has 2095257564, and one object where the others have a list; and its degree signs were lost before it was
 * published, so that U+FFFD stands there in both. It is compared with its number and its brackets put right.
 */
const set = path.dirname(createRequire(import.meta.url).resolve('csv-spectrum/package.json'))
const cases = readdirSync(path.join(set, 'csvs')).map(file => path.basename(file, '.csv'))
const faulty = 'location_coordinates'

type Expected = readonly Readonly<Record<string, string>>[]

function readExpected(name: string): Expected {
  const parsed: unknown = JSON.parse(readFileSync(path.join(set, 'json', `${name}.json`), 'utf8'))
  return parsed as Expected
}

async function readRecords(name: string) {
  const rows: (readonly string[])[] = []
  for await (const read of readCsvRows(path.join(set, 'csvs', `${name}.csv`)))
    for (const { cells, fault } of read.rows) {
      expect(fault).toBeUndefined()
      rows.push(cells)
    }
  const [header = [], ...records] = rows
  return records.map(cells => Object.fromEntries(header.map((name, at) => [name, cells[at]])))
}

/** A line break in a cell comes out as LF, whichever system wrote the file: so a text is the same from all of them. */
function withLineFeeds(expected: Expected): Expected {
  return expected.map(record =>
    Object.fromEntries(Object.entries(record).map(([name, cell]) => [name, cell.replaceAll('\r\n', '\n')])),
  )
}

describe('csv-spectrum', () => {
  test('has the twelve cases that are read here', () => expect(cases).toHaveLength(12))

  test.each(cases.filter(name => name !== faulty))('%s', async name => {
    expect(await readRecords(name)).toEqual(withLineFeeds(readExpected(name)))
  })

  test('location_coordinates, as its CSV has it', async () => {
    const [stated] = [readExpected(faulty)].flat() as Expected
    expect(stated?.['Contact Phone Number']).toBe('1234567890')
    expect(await readRecords(faulty)).toEqual([
      { ...stated, Counties: 'Stanislaus', 'Contact Phone Number': '2095257564' },
    ])
  })
})
