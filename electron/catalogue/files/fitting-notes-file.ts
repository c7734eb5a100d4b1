import { z } from 'zod'
import { readLicensedFamilies } from '../licensed-families-queries.ts'
import { defineFile } from '../loading/catalogue-file.ts'
import { list, oneOf, word, wordOrUnknown } from '../loading/cells.ts'
import { KeyedRows } from '../loading/keyed-rows.ts'
import { RowFault } from '../loading/row-fault.ts'
import { upsert } from '../loading/upsert.ts'

/** One note a row, with all the families that it is for. */
export const fittingNotesFile = defineFile({
  name: 'fitting_notes.csv',
  row: z.object({
    stage: oneOf('before', 'fitting', 'test'),
    note: word,
    families: list.refine(
      families => families.length > 0,
      'is empty: name the families that the note is for',
    ),
    source: wordOrUnknown,
  }),
  neededColumns: ['stage', 'note', 'families'],
  open: ({ database, known }) => {
    const rows = new KeyedRows(
      2,
      database.tuples(
        `SELECT stage, note, source,
           ifnull((SELECT group_concat(family_id, ',' ORDER BY family_id) FROM fitting_note_family
             WHERE fitting_note_family.fitting_note_id = fitting_note.fitting_note_id), '')
         FROM fitting_note`,
      ),
    )
    const licensed = readLicensedFamilies(database)
    return {
      take({ stage, note, families, source }, line) {
        const familyIds = families
          .map(family => {
            const familyId = known.family(family, { column: 'families' })
            const hazard = licensed.get(familyId)
            if (hazard !== undefined) throw new RowFault('families', wordLicensed(family, hazard))
            return familyId
          })
          .sort((one, other) => one - other)
        return rows.write({ key: [stage, note], values: [source, familyIds.join()], line }, () => {
          const noteId = upsert(
            database,
            `INSERT INTO fitting_note (stage, note, source) VALUES (?, ?, ?)
             ON CONFLICT (stage, note) DO UPDATE SET source = excluded.source
             RETURNING fitting_note_id AS id`,
            stage,
            note,
            source,
          )
          database.run('DELETE FROM fitting_note_family WHERE fitting_note_id = ?', noteId)
          for (const familyId of familyIds)
            database.run(
              'INSERT INTO fitting_note_family (family_id, fitting_note_id) VALUES (?, ?)',
              familyId,
              noteId,
            )
        })
      },
      retireUnsaid() {
        const unsaid = [...rows.unstated()]
        for (const key of unsaid) {
          database.run(
            `DELETE FROM fitting_note_family WHERE fitting_note_id = (
               SELECT fitting_note_id FROM fitting_note WHERE stage = ? AND note = ?)`,
            ...key,
          )
          database.run('DELETE FROM fitting_note WHERE stage = ? AND note = ?', ...key)
        }
        return unsaid.length
      },
    }
  },
})

function wordLicensed(family: string, hazard: string): string {
  return `names ${family}, which carries ${hazard}: no notes are given for such work; take it out of the list`
}
