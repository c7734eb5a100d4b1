import { z } from 'zod'
import { licensedHazard } from '../../../shared-schemas/hazards.ts'
import { readLicensedFamilies } from '../licensed-families-queries.ts'
import { defineFile } from '../loading/catalogue-file.ts'
import { decimal, list, oneOf, oneOfOrUnknown, text, word, wordOrUnknown } from '../loading/cells.ts'
import { KeyedRows } from '../loading/keyed-rows.ts'
import { RowFault } from '../loading/row-fault.ts'
import { upsert } from '../loading/upsert.ts'

const row = z
  .object({
    appliance_type: word,
    symptom: word,
    also_said: list,
    cause: word,
    ends_in: oneOf('part', 'no-part', 'normal', 'licensed'),
    licensed_for: oneOfOrUnknown('gas', 'sealed-refrigerant', 'microwave-hv', 'fixed-wiring'),
    families: list,
    weight: decimal.transform(Number).refine(weight => weight > 0, 'must be above 0'),
    advice: text,
    source: wordOrUnknown,
  })
  .superRefine((given, context) => {
    const fault = findEndFault(given)
    if (fault !== undefined) context.addIssue({ code: 'custom', path: [fault.column], message: fault.reason })
  })

/** One cause of one symptom a row. */
export const faultsFile = defineFile({
  name: 'faults.csv',
  row,
  neededColumns: ['appliance_type', 'symptom', 'cause', 'ends_in', 'weight'],
  open: ({ database, known }) => {
    const rows = new KeyedRows(
      3,
      database.tuples(
        `SELECT appliance_type, symptom, cause, also_said, ends_in, licensed_for, weight, advice, source,
           ifnull((SELECT group_concat(family_id, ',' ORDER BY family_id) FROM fault_family
             WHERE fault_family.fault_id = fault.fault_id), '')
         FROM fault`,
      ),
    )
    const licensed = readLicensedFamilies(database)
    const types = new Set<string>()
    return {
      take(given, line) {
        types.add(given.appliance_type)
        const familyIds = given.families
          .map(family => {
            const familyId = known.family(family, { column: 'families' })
            const hazard = licensed.get(familyId)
            if (given.ends_in === 'part' && hazard !== undefined) throw needsLicence(family, hazard)
            return familyId
          })
          .sort((one, other) => one - other)
        const key = [given.appliance_type, given.symptom, given.cause]
        const values = [
          given.also_said.join('|'),
          given.ends_in,
          given.licensed_for,
          given.weight,
          given.advice,
          given.source,
        ]
        return rows.write({ key, values: [...values, familyIds.join()], line }, () => {
          const faultId = upsert(
            database,
            `INSERT INTO fault (appliance_type, symptom, cause, also_said, ends_in, licensed_for, weight, advice, source)
             VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)
             ON CONFLICT (appliance_type, symptom, cause) DO UPDATE SET also_said = excluded.also_said,
               ends_in = excluded.ends_in, licensed_for = excluded.licensed_for, weight = excluded.weight,
               advice = excluded.advice, source = excluded.source
             RETURNING fault_id AS id`,
            ...key,
            ...values,
          )
          database.run('DELETE FROM fault_family WHERE fault_id = ?', faultId)
          for (const familyId of familyIds)
            database.run('INSERT INTO fault_family (fault_id, family_id) VALUES (?, ?)', faultId, familyId)
        })
      },
      retireUnsaid() {
        const unsaid = [...rows.unstated()].filter(([type]) => types.has(String(type)))
        for (const key of unsaid) {
          database.run(
            `DELETE FROM fault_family WHERE fault_id = (
               SELECT fault_id FROM fault WHERE appliance_type = ? AND symptom = ? AND cause = ?)`,
            ...key,
          )
          database.run('DELETE FROM fault WHERE appliance_type = ? AND symptom = ? AND cause = ?', ...key)
        }
        return unsaid.length
      },
    }
  },
})

function findEndFault({
  ends_in,
  licensed_for,
  families,
  advice,
}: Pick<z.output<typeof row>, 'ends_in' | 'licensed_for' | 'families' | 'advice'>):
  | { readonly column: string; readonly reason: string }
  | undefined {
  if (ends_in === 'part' && families.length === 0)
    return {
      column: 'families',
      reason: 'is empty: name the families of the part, or write no-part in ends_in',
    }
  if ((ends_in === 'no-part' || ends_in === 'normal') && families.length > 0)
    return { column: 'families', reason: `must be empty where a cause ends in ${ends_in}` }
  if (ends_in === 'licensed' && licensed_for === null)
    return { column: 'licensed_for', reason: `is empty: write ${licensedHazard.options.join(' or ')}` }
  if (ends_in !== 'licensed' && licensed_for !== null)
    return { column: 'licensed_for', reason: 'is for causes that end in licensed: empty it, or mend ends_in' }
  if (ends_in === 'licensed' && advice !== '')
    return {
      column: 'advice',
      reason: 'must be empty: work that needs a licence has no steps here, and the program says who does it',
    }
  return undefined
}

function needsLicence(family: string, hazard: string): RowFault {
  return new RowFault(
    'ends_in',
    `cannot be part: family ${family} carries ${hazard}, so write licensed, and ${hazard} in licensed_for`,
  )
}
