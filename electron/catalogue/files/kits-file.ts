import { z } from 'zod'
import type { ReadableDatabase, WritableDatabase } from '../../database/handles.ts'
import { defineFile } from '../loading/catalogue-file.ts'
import { count, word } from '../loading/cells.ts'
import { findLoopedReplacements } from '../loading/find-supersession-loops.ts'
import { contradicts, KeyedRows, type Outcome } from '../loading/keyed-rows.ts'
import type { KnownThings } from '../loading/known-things.ts'
import { RowFault } from '../loading/row-fault.ts'

const row = z.object({ kit: word, part_number: word, quantity: count(1) })

/** A part stands in a kit as a step leads from one to the other, so that loops are found as among replacements. */
interface Stated {
  readonly old: number
  readonly new: number
  readonly way: 'one'
  readonly quantity: number
  readonly line: number
}

/** Whether a kit stands in itself shows only when all kits are known, so rows are stored at the end. */
export const kitsFile = defineFile({
  name: 'kits.csv',
  row,
  neededColumns: ['kit', 'part_number', 'quantity'],
  open: ({ database, known }) => {
    const stated = new Map<string, Stated>()
    const repeated: number[] = []
    return {
      take(given, line) {
        const next = readStated(known, given, line)
        const key = nameRow(next.old, next.new)
        const before = stated.get(key)
        if (before === undefined) stated.set(key, next)
        else if (before.quantity !== next.quantity) throw contradicts(before.line)
        else repeated.push(line)
        return 'later'
      },
      *finish() {
        yield* storeSound(database, stated)
        for (const line of repeated) yield [line, 'unchanged' as const]
      },
      /** A kit that the rows name holds what they name, and nothing else any more. */
      retireUnsaid() {
        const kits = new Set([...stated.values()].map(({ old }) => old))
        const unsaid = readContents(database).filter(
          ([kit, part]) => kits.has(kit) && !stated.has(nameRow(kit, part)),
        )
        for (const [kit, part] of unsaid)
          database.run('DELETE FROM kit_content WHERE kit_part_id = ? AND part_id = ?', kit, part)
        return unsaid.length
      },
    }
  },
})

function readStated(known: KnownThings, given: z.output<typeof row>, line: number): Stated {
  const kit = known.part(given.kit, { column: 'kit' })
  const part = known.part(given.part_number)
  if (kit === part)
    throw new RowFault('part_number', `is the kit ${given.kit} itself: name a part that comes in it`)
  return { old: kit, new: part, way: 'one', quantity: given.quantity, line }
}

function nameRow(kit: number, part: number): string {
  return `${kit}\u001f${part}`
}

function* storeSound(
  database: WritableDatabase,
  stated: ReadonlyMap<string, Stated>,
): Iterable<readonly [number, Outcome | RowFault]> {
  const stored = readContents(database)
  const rows = new KeyedRows(2, stored)
  const others = stored
    .filter(([kit, part]) => !stated.has(nameRow(kit, part)))
    .map(([kit, part]) => ({ old: kit, new: part, way: 'one' as const, line: 0 }))
  const looped = findLoopedReplacements([...others, ...stated.values()])
  const numbers = new Map(database.tuples<[number, string]>('SELECT part_id, part_number FROM part'))
  for (const next of stated.values()) {
    const loop = looped.get(next)
    yield [next.line, loop === undefined ? store(database, rows, next) : loopFault(loop, numbers)]
  }
}

function readContents(database: ReadableDatabase): [kit: number, part: number, quantity: number][] {
  return [
    ...database.tuples<[number, number, number]>('SELECT kit_part_id, part_id, quantity FROM kit_content'),
  ]
}

function loopFault(loop: readonly number[], numbers: ReadonlyMap<number, string>): RowFault {
  const named = loop.map(partId => numbers.get(partId)).join(' -> ')
  return new RowFault(
    'part_number',
    `closes a loop, ${named}: no kit comes in itself; take out the row that is wrong`,
  )
}

function store(database: WritableDatabase, rows: KeyedRows, stated: Stated): Outcome {
  const { old: kit, new: part, quantity, line } = stated
  return rows.write({ key: [kit, part], values: [quantity], line }, () => {
    database.run(
      `INSERT INTO kit_content (kit_part_id, part_id, quantity) VALUES (?, ?, ?)
       ON CONFLICT DO UPDATE SET quantity = excluded.quantity`,
      kit,
      part,
      quantity,
    )
  })
}
