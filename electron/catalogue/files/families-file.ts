import { z } from 'zod'
import { hazard } from '../../../shared-schemas/hazards.ts'
import { defineFile } from '../loading/catalogue-file.ts'
import { list, listOf, text, word, yesNoOrUnknown } from '../loading/cells.ts'
import { KeyedRows } from '../loading/keyed-rows.ts'
import { upsert } from '../loading/upsert.ts'

const hazardList = listOf('hazard', ...hazard.options)

export const familiesFile = defineFile({
  name: 'families.csv',
  row: z.object({
    family: word,
    name: text,
    function: text,
    appliance_types: list,
    hazards: hazardList,
    safety_device: yesNoOrUnknown,
  }),
  neededColumns: ['family'],
  open: ({ database, known }) => {
    const rows = new KeyedRows(
      1,
      database.tuples(
        `SELECT family, name, function, appliance_types, safety_device,
           ifnull((SELECT group_concat(hazard, '|' ORDER BY hazard) FROM family_hazard WHERE family_id = family.family_id), '')
         FROM family`,
      ),
    )
    return {
      take(row, line) {
        // The flag is raised by name: most families, such as basket wheels, leave it empty.
        const safetyDevice = row.safety_device === true ? 1 : 0
        const values = [row.name || row.family, row.function, row.appliance_types.join('|'), safetyDevice]
        const named = [...row.hazards].sort()
        return rows.write({ key: [row.family], values: [...values, named.join('|')], line }, () => {
          const familyId = upsert(
            database,
            `INSERT INTO family (family, name, function, appliance_types, safety_device) VALUES (?, ?, ?, ?, ?)
             ON CONFLICT (family) DO UPDATE SET name = excluded.name, function = excluded.function,
               appliance_types = excluded.appliance_types, safety_device = excluded.safety_device
             RETURNING family_id AS id`,
            row.family,
            ...values,
          )
          known.families.set(row.family, familyId)
          database.run('DELETE FROM family_hazard WHERE family_id = ?', familyId)
          for (const hazard of named)
            database.run('INSERT INTO family_hazard (family_id, hazard) VALUES (?, ?)', familyId, hazard)
        })
      },
    }
  },
})
