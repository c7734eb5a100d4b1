import { z } from 'zod'
import { defineFile } from '../loading/catalogue-file.ts'
import { word } from '../loading/cells.ts'
import { checkAttributeValue } from '../loading/check-attribute-value.ts'
import { KeyedRows } from '../loading/keyed-rows.ts'

export const modelAttributesFile = defineFile({
  name: 'model_attributes.csv',
  row: z.object({ brand: word, model_number: word, family: word, attribute: word, value: word }),
  neededColumns: ['brand', 'model_number', 'family', 'attribute', 'value'],
  open: ({ database, known }) => {
    const rows = new KeyedRows(
      3,
      database.tuples('SELECT model_id, family_id, attribute, value FROM model_attribute'),
    )
    return {
      take({ brand, model_number, family, attribute, value }, line) {
        const modelId = known.model(brand, model_number)
        const familyId = known.family(family)
        const unit = known.attributeUnit(familyId, { family, attribute, column: 'attribute' })
        checkAttributeValue({ attribute, value, unit, column: 'value' })
        return rows.write({ key: [modelId, familyId, attribute], values: [value], line }, () => {
          database.run(
            `INSERT INTO model_attribute (model_id, family_id, attribute, value) VALUES (?, ?, ?, ?)
             ON CONFLICT DO UPDATE SET value = excluded.value`,
            modelId,
            familyId,
            attribute,
            value,
          )
        })
      },
    }
  },
})
