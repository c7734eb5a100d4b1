import { z } from 'zod'
import type { WritableDatabase } from '../../database/handles.ts'
import { defineFile } from '../loading/catalogue-file.ts'
import { gtinOrUnknown, oneOf, text, word } from '../loading/cells.ts'
import { checkAttributeValue } from '../loading/check-attribute-value.ts'
import { KeyedRows } from '../loading/keyed-rows.ts'
import type { KnownThings } from '../loading/known-things.ts'
import { readPairs } from '../loading/read-pairs.ts'
import { RowFault } from '../loading/row-fault.ts'
import { upsert } from '../loading/upsert.ts'

export const partsFile = defineFile({
  name: 'parts.csv',
  row: z.object({
    part_number: word,
    family: word,
    maker: text,
    kind: oneOf('genuine', 'pattern'),
    description: text,
    gtin: gtinOrUnknown,
    attributes: text,
  }),
  neededColumns: ['part_number', 'family', 'kind'],
  open: ({ database, known }) => {
    const rows = new KeyedRows(1, database.tuples(storedParts))
    const gtins = new Map<string, string>(database.tuples<[string, string]>(storedGtins))
    const otherNumbers = new Map<string, string>(database.tuples<[string, string]>(storedCrossReferences))
    return {
      take(row, line) {
        const key = known.keyFor(row.part_number, 'part_number')
        const familyId = known.family(row.family)
        const attributes = readAttributes(known, familyId, row)
        refuseOthersGtin(gtins, row, key)
        refuseOthersNumber(otherNumbers, row, key)
        const values = [row.part_number, familyId, row.maker, row.kind, row.description, row.gtin]
        const stated = { key: [key], values: [...values, joinPairs(attributes)], line }
        const outcome = rows.write(stated, before => {
          const partId = upsert(database, upsertPart, key, ...values)
          known.parts.set(key, partId)
          replaceAttributes(database, partId, attributes)
          if (before?.[gtinAt]) gtins.delete(String(before[gtinAt]))
        })
        if (row.gtin !== null) gtins.set(row.gtin, key)
        return outcome
      },
    }
  },
})

const gtinAt = 5

const storedParts = `SELECT part_key, part_number, family_id, maker, kind, description, gtin,
    ifnull((SELECT group_concat(attribute || '=' || value, ';' ORDER BY attribute)
            FROM part_attribute WHERE part_id = part.part_id), '')
  FROM part`

const storedGtins = 'SELECT gtin, part_key FROM part WHERE gtin IS NOT NULL'

const storedCrossReferences = 'SELECT number_key, part_key FROM cross_reference JOIN part USING (part_id)'

const upsertPart = `INSERT INTO part (part_key, part_number, family_id, maker, kind, description, gtin)
  VALUES (?, ?, ?, ?, ?, ?, ?)
  ON CONFLICT (part_key) DO UPDATE SET part_number = excluded.part_number, family_id = excluded.family_id,
    maker = excluded.maker, kind = excluded.kind, description = excluded.description, gtin = excluded.gtin
  RETURNING part_id AS id`

type Pairs = readonly (readonly [name: string, value: string])[]

/** In the order of their names, so that the same attributes in another order are the same. */
function readAttributes(
  known: KnownThings,
  familyId: number,
  { family, attributes }: { family: string; attributes: string },
): Pairs {
  const pairs = readPairs(attributes, 'attributes')
  for (const [attribute, value] of pairs) {
    const unit = known.attributeUnit(familyId, { family, attribute, column: 'attributes' })
    checkAttributeValue({ attribute, value, unit, column: 'attributes' })
  }
  return pairs.sort(([one], [other]) => (one < other ? -1 : 1))
}

function joinPairs(pairs: Pairs): string {
  return pairs.map(([name, value]) => `${name}=${value}`).join(';')
}

function replaceAttributes(database: WritableDatabase, partId: number, attributes: Pairs): void {
  database.run('DELETE FROM part_attribute WHERE part_id = ?', partId)
  for (const [attribute, value] of attributes)
    database.run(
      'INSERT INTO part_attribute (part_id, attribute, value) VALUES (?, ?, ?)',
      partId,
      attribute,
      value,
    )
}

function refuseOthersGtin(
  gtins: ReadonlyMap<string, string>,
  { gtin }: { gtin: string | null },
  key: string,
): void {
  const holder = gtin === null ? undefined : gtins.get(gtin)
  if (holder !== undefined && holder !== key)
    throw new RowFault('gtin', `is the GTIN of part ${holder} already: one of the two is mistyped`)
}

function refuseOthersNumber(
  others: ReadonlyMap<string, string>,
  { part_number }: { part_number: string },
  key: string,
): void {
  const holder = others.get(key)
  if (holder !== undefined && holder !== key)
    throw new RowFault(
      'part_number',
      `“${part_number}” is another number of part ${holder} (cross_references.csv): it cannot be a part of its own`,
    )
}
