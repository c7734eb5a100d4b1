import { z } from 'zod'
import type { Bindable, WritableDatabase } from '../../database/handles.ts'
import { defineFile } from '../loading/catalogue-file.ts'
import { dateOrUnknown, list, oneOf, word } from '../loading/cells.ts'
import { findLoopedReplacements, type Replacement } from '../loading/find-supersession-loops.ts'
import { contradicts, KeyedRows, type Outcome } from '../loading/keyed-rows.ts'
import type { KnownThings } from '../loading/known-things.ts'
import { checkRanges } from '../loading/ranges.ts'
import { RowFault } from '../loading/row-fault.ts'
import { upsert } from '../loading/upsert.ts'

const row = z
  .object({
    old_part: word,
    new_part: word,
    way: oneOf('one', 'both'),
    made_from: dateOrUnknown,
    made_to: dateOrUnknown,
    also_needs: list,
  })
  .superRefine(checkRanges)

interface Stated {
  readonly key: readonly Bindable[]
  readonly old: number
  readonly new: number
  readonly way: 'one' | 'both'
  readonly needs: readonly number[]
  readonly line: number
}

/** Whether a replacement leads back to itself shows only when all of them are known, so rows are stored at the end. */
export const supersessionsFile = defineFile({
  name: 'supersessions.csv',
  row,
  neededColumns: ['old_part', 'new_part', 'way'],
  open: ({ database, known }) => {
    const stated = new Map<string, Stated>()
    const repeated: number[] = []
    return {
      take(given, line) {
        const next = readStated(known, given, line)
        const key = next.key.join('\u001f')
        const before = stated.get(key)
        if (before === undefined) stated.set(key, next)
        else if (before.way !== next.way || before.needs.join() !== next.needs.join())
          throw contradicts(before.line)
        else repeated.push(line)
        return 'later'
      },
      *finish() {
        yield* storeSound(database, [...stated.values()])
        for (const line of repeated) yield [line, 'unchanged' as const]
      },
    }
  },
})

function readStated(known: KnownThings, given: z.output<typeof row>, line: number): Stated {
  const old = known.part(given.old_part, { column: 'old_part' })
  const next = known.part(given.new_part, { column: 'new_part' })
  if (old === next)
    throw new RowFault('new_part', `is ${given.old_part} itself: name the part that replaces it`)
  const needs = given.also_needs.map(number => known.part(number, { column: 'also_needs' }))
  if (needs.some(need => need === old || need === next))
    throw new RowFault('also_needs', 'names the old or the new part: name only what must be bought besides')
  const key = [old, next, given.made_from ?? '', given.made_to ?? '']
  return { key, old, new: next, way: given.way, needs: needs.sort((a, b) => a - b), line }
}

function* storeSound(
  database: WritableDatabase,
  stated: readonly Stated[],
): Iterable<readonly [number, Outcome | RowFault]> {
  const rows = new KeyedRows(4, database.tuples(storedSupersessions))
  const looped = findLoopedReplacements([...listStored(database, stated), ...stated])
  const numbers = new Map<number, string>(
    database.tuples<[number, string]>('SELECT part_id, part_number FROM part'),
  )
  for (const next of stated) {
    const loop = looped.get(next)
    yield [next.line, loop === undefined ? store(database, rows, next) : loopFault(loop, numbers)]
  }
}

const storedSupersessions = `SELECT old_part_id, new_part_id, ifnull(made_from, ''), ifnull(made_to, ''), way,
    ifnull((SELECT group_concat(part_id, ',' ORDER BY part_id)
            FROM supersession_need WHERE supersession_id = supersession.supersession_id), '')
  FROM supersession`

/** What the database holds of other replacements than those now stated. */
function listStored(database: WritableDatabase, stated: readonly Stated[]): Replacement[] {
  const restated = new Set(stated.map(({ key }) => key.join('\u001f')))
  const stored =
    database.tuples<[number, number, string, string, 'one' | 'both', string]>(storedSupersessions)
  return [...stored]
    .filter(columns => !restated.has(columns.slice(0, 4).join('\u001f')))
    .map(([old, next, , , way]) => ({ old, new: next, way, line: 0 }))
}

function loopFault(loop: readonly number[], numbers: ReadonlyMap<number, string>): RowFault {
  const named = loop.map(partId => numbers.get(partId)).join(' -> ')
  return new RowFault(
    'new_part',
    `closes a loop, ${named}: no part is the last; take out the row that is wrong`,
  )
}

function store(database: WritableDatabase, rows: KeyedRows, { key, way, needs, line }: Stated): Outcome {
  return rows.write({ key, values: [way, needs.join()], line }, () => {
    const supersessionId = upsert(
      database,
      `INSERT INTO supersession (old_part_id, new_part_id, made_from, made_to, way)
       VALUES (?, ?, nullif(?, ''), nullif(?, ''), ?)
       ON CONFLICT (old_part_id, new_part_id, ifnull(made_from, ''), ifnull(made_to, ''))
       DO UPDATE SET way = excluded.way RETURNING supersession_id AS id`,
      ...key,
      way,
    )
    database.run('DELETE FROM supersession_need WHERE supersession_id = ?', supersessionId)
    for (const partId of needs)
      database.run(
        'INSERT INTO supersession_need (supersession_id, part_id) VALUES (?, ?)',
        supersessionId,
        partId,
      )
  })
}
