import { z } from 'zod'
import { defineFile } from '../loading/catalogue-file.ts'
import { decimalOrUnknown, oneOf, text, word } from '../loading/cells.ts'
import { KeyedRows } from '../loading/keyed-rows.ts'

export const attributesFile = defineFile({
  name: 'attributes.csv',
  row: z
    .object({
      family: word,
      attribute: word,
      unit: text,
      rule: oneOf('equal', 'within', 'at-least', 'at-most', 'covers'),
      tolerance: decimalOrUnknown,
    })
    .superRefine(({ rule, tolerance }, context) => {
      if ((rule === 'within') === (tolerance !== null)) return
      const message =
        rule === 'within'
          ? 'is empty: “within” needs one, as 0.05 for five in a hundred'
          : `must be empty: “${rule}” has none`
      context.addIssue({ code: 'custom', path: ['tolerance'], message })
    }),
  neededColumns: ['family', 'attribute', 'rule'],
  open: ({ database, known }) => {
    const rows = new KeyedRows(
      2,
      database.tuples('SELECT family_id, attribute, unit, rule, tolerance FROM family_attribute'),
    )
    return {
      take(row, line) {
        const familyId = known.family(row.family)
        const values = [row.unit, row.rule, row.tolerance === null ? null : Number(row.tolerance)]
        return rows.write({ key: [familyId, row.attribute], values, line }, () => {
          database.run(
            `INSERT INTO family_attribute (family_id, attribute, unit, rule, tolerance) VALUES (?, ?, ?, ?, ?)
             ON CONFLICT DO UPDATE SET unit = excluded.unit, rule = excluded.rule, tolerance = excluded.tolerance`,
            familyId,
            row.attribute,
            ...values,
          )
          known.attributesOf(familyId).set(row.attribute, row.unit)
        })
      },
    }
  },
})
