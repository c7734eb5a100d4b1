import { z } from 'zod'
import { defineFile } from '../loading/catalogue-file.ts'
import { oneOf, text, word } from '../loading/cells.ts'
import { KeyedRows } from '../loading/keyed-rows.ts'
import { upsert } from '../loading/upsert.ts'

export const locationsFile = defineFile({
  name: 'locations.csv',
  row: z.object({ location: word, kind: oneOf('shop', 'van', 'quarantine'), name: text }),
  neededColumns: ['location', 'kind'],
  open: ({ database, known }) => {
    const rows = new KeyedRows(1, database.tuples('SELECT location, kind, name FROM location'))
    return {
      take({ location, kind, name }, line) {
        const values = [kind, name || location]
        return rows.write({ key: [location], values, line }, () => {
          const locationId = upsert(
            database,
            `INSERT INTO location (location, kind, name) VALUES (?, ?, ?)
             ON CONFLICT (location) DO UPDATE SET kind = excluded.kind, name = excluded.name
             RETURNING location_id AS id`,
            location,
            ...values,
          )
          known.locations.set(location, locationId)
          if (kind === 'van') known.vans.add(locationId)
          else known.vans.delete(locationId)
        })
      },
    }
  },
})
