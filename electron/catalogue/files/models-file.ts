import { z } from 'zod'
import { defineFile } from '../loading/catalogue-file.ts'
import { dateOrUnknown, ratingOrUnknown, text, word, wordOrUnknown } from '../loading/cells.ts'
import { coverAddedModels } from '../loading/fitment-patterns.ts'
import { KeyedRows } from '../loading/keyed-rows.ts'
import { checkRanges } from '../loading/ranges.ts'
import { upsert } from '../loading/upsert.ts'

export const modelsFile = defineFile({
  name: 'models.csv',
  row: z
    .object({
      brand: word,
      model_number: word,
      appliance_type: text,
      platform: wordOrUnknown,
      made_from: dateOrUnknown,
      made_to: dateOrUnknown,
      volts: ratingOrUnknown('V'),
      hertz: ratingOrUnknown('Hz'),
      watts: ratingOrUnknown('W'),
    })
    .superRefine(checkRanges),
  neededColumns: ['brand', 'model_number'],
  open: ({ database, known, fitments }) => {
    const rows = new KeyedRows(
      2,
      database.tuples(
        `SELECT brand_id, model_key, model_number, appliance_type, platform, made_from, made_to, volts, hertz, watts
         FROM model`,
      ),
    )
    return {
      take(row, line) {
        const brandId = known.brand(row.brand)
        const key = known.keyFor(row.model_number, 'model_number')
        const values = [
          row.model_number,
          row.appliance_type,
          row.platform,
          row.made_from,
          row.made_to,
          row.volts,
          row.hertz,
          row.watts,
        ]
        return rows.write({ key: [brandId, key], values, line }, before => {
          const modelId = upsert(
            database,
            `INSERT INTO model (brand_id, model_key, model_number, appliance_type, platform, made_from, made_to, volts,
               hertz, watts) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
             ON CONFLICT (model_key, brand_id) DO UPDATE SET model_number = excluded.model_number,
               appliance_type = excluded.appliance_type, platform = excluded.platform, made_from = excluded.made_from,
               made_to = excluded.made_to, volts = excluded.volts, hertz = excluded.hertz, watts = excluded.watts
             RETURNING model_id AS id`,
            brandId,
            key,
            ...values,
          )
          known.addModel({ brandId, key, modelId })
          if (before === undefined) known.modelsAddedNow.push({ brandId, key, modelId })
        })
      },
      finish() {
        coverAddedModels(database, fitments, known.modelsAddedNow)
        return []
      },
    }
  },
})
