import papaparse from 'papaparse'
import { expect, test } from 'vitest'
import { writeModels } from '../../../renderer/components/models-csv.ts'
import { unguardCell } from '../../../shared-schemas/csv-text.ts'

test('every model is a row, and a general-purpose reader gives every number back as it was', () => {
  const models = [
    {
      brand: 'Ostrel',
      modelNumber: '00480121',
      applianceType: 'washer',
      conditions: ['made 2014-06 on', 'left'],
    },
    { brand: '=SUM(A1)', modelNumber: '-12+34', applianceType: '', conditions: [] },
    { brand: 'Smith, Sons', modelNumber: '1E5', applianceType: 'oven', conditions: ['serial "A" to "B"'] },
  ]
  const { data, errors } = papaparse.parse<Record<string, string>>(writeModels(models), {
    header: true,
    skipEmptyLines: true,
  })
  expect(errors).toEqual([])
  expect(
    data.map(row => Object.fromEntries(Object.entries(row).map(([name, cell]) => [name, unguardCell(cell)]))),
  ).toEqual(
    models.map(({ brand, modelNumber, applianceType, conditions }) => ({
      brand,
      model_number: modelNumber,
      appliance_type: applianceType,
      conditions: conditions.join(' | '),
    })),
  )
  // No spreadsheet runs it.
  expect(writeModels(models)).toContain("'=SUM(A1),'-12+34")
})
