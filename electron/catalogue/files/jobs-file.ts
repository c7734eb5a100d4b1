import { z } from 'zod'
import { defineFile } from '../loading/catalogue-file.ts'
import { list, text, wholeDate, word, wordOrUnknown, yesNoOrUnknown } from '../loading/cells.ts'
import { KeyedRows } from '../loading/keyed-rows.ts'

export const jobsFile = defineFile({
  name: 'jobs.csv',
  row: z
    .object({
      job: word,
      date: wholeDate,
      van: wordOrUnknown,
      brand: wordOrUnknown,
      model_number: wordOrUnknown,
      symptom: text,
      families_needed: list,
      finished_first_visit: yesNoOrUnknown,
    })
    .superRefine(({ brand, model_number }, context) => {
      if (model_number !== null && brand === null)
        context.addIssue({
          code: 'custom',
          path: ['brand'],
          message: 'is empty: a model number needs its brand',
        })
    }),
  neededColumns: ['job', 'date'],
  open: ({ database, known }) => {
    const rows = new KeyedRows(
      1,
      database.tuples(
        `SELECT job, date, location_id, brand_id, model_id, symptom, finished_first_visit,
           ifnull((SELECT group_concat(family_id, ',' ORDER BY family_id) FROM job_family WHERE job_family.job = job.job), '')
         FROM job`,
      ),
    )
    return {
      take(row, line) {
        const familyIds = row.families_needed
          .map(family => known.family(family, { column: 'families_needed' }))
          .sort((one, other) => one - other)
        const values = [
          row.date,
          row.van === null ? null : known.van(row.van),
          row.brand === null ? null : known.brand(row.brand),
          row.brand === null || row.model_number === null ? null : known.model(row.brand, row.model_number),
          row.symptom,
          row.finished_first_visit === null ? null : Number(row.finished_first_visit),
        ]
        return rows.write({ key: [row.job], values: [...values, familyIds.join()], line }, () => {
          database.run(
            `INSERT INTO job (job, date, location_id, brand_id, model_id, symptom, finished_first_visit)
             VALUES (?, ?, ?, ?, ?, ?, ?)
             ON CONFLICT DO UPDATE SET date = excluded.date, location_id = excluded.location_id,
               brand_id = excluded.brand_id, model_id = excluded.model_id, symptom = excluded.symptom,
               finished_first_visit = excluded.finished_first_visit`,
            row.job,
            ...values,
          )
          database.run('DELETE FROM job_family WHERE job = ?', row.job)
          for (const familyId of familyIds)
            database.run('INSERT INTO job_family (job, family_id) VALUES (?, ?)', row.job, familyId)
        })
      },
    }
  },
})
