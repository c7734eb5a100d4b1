import { expect, test } from 'vitest'
import { readGuide } from '../../../electron/fault-guide/guide-queries.ts'
import { judgeReading } from '../../../electron/fault-guide/judge-reading.ts'
import { familiesOfCheck, readStatedValues } from '../../../electron/fault-guide/stated-values-queries.ts'
import type { ModelId } from '../../../shared-schemas/identifiers.ts'
import { openTestCatalogue } from '../../builders/open-test-catalogue.ts'
import { smallCatalogue } from '../../builders/small-catalogue.ts'

/** Two washers with heaters of other powers. */
async function openWithHeaters() {
  const { database, load } = openTestCatalogue()
  const add = (file: keyof typeof smallCatalogue, ...rows: string[]) =>
    `${smallCatalogue[file]}${rows.map(row => `${row}\n`).join('')}`
  const { rejected } = await load({
    ...smallCatalogue,
    'families.csv': add('families.csv', 'heater,Heater,heating,washer,mains|water|hot,no'),
    'attributes.csv': add('attributes.csv', 'heater,element power,W,within,0.05'),
    'model_attributes.csv': add(
      'model_attributes.csv',
      'Ostrel,OW 4512/01,heater,element power,2000',
      'Ostrel,OW 4512/02,heater,element power,1800',
    ),
    'faults.csv': add('faults.csv', 'washer,does not heat,,heater open,part,,heater,30,,'),
    'fault_checks.csv': add(
      'fault_checks.csv',
      'washer,heater,,Measure it,resistance,heater,10 %,within=0.94|low=0.02|high=0.02|open=0.02,8,,mains,repairer,',
    ),
    'fault_outcomes.csv': add(
      'fault_outcomes.csv',
      'washer,heater,heater open,within=0.02|low=0.01|high=0.02|open=0.95',
    ),
  })
  expect(rejected).toEqual([])
  const idOf = (number: string) =>
    [...database.tuples<[ModelId]>('SELECT model_id FROM model WHERE model_number = ?', number)][0]?.[0] ??
    (0 as ModelId)
  return { database, of2000: idOf('OW 4512/01'), of1800: idOf('OW 4512/02') }
}

test('a heater is judged by the watts that the catalogue states of this model', async () => {
  const { database, of2000 } = await openWithHeaters()
  const guide = readGuide(database, { applianceType: 'washer', symptom: 'does not heat' })
  const check = guide?.checks[0]
  if (guide === undefined || check === undefined) throw new Error('the heater is measured')
  const stated = readStatedValues(database, [of2000], familiesOfCheck(guide, check))
  expect(stated).toEqual({ heaterWatts: '2000 W', ohmsAt25: null })
  expect(judgeReading(check, '26.4', { volts: '230', watts: '9999', ...stated })).toMatchObject({
    value: { outcome: 'within' },
  })
})

test('where several heaters may be in it, the range of their watts is stated', async () => {
  const { database, of2000, of1800 } = await openWithHeaters()
  const read = (...models: ModelId[]) => readStatedValues(database, models, ['heater']).heaterWatts
  expect(read(of1800)).toBe('1800 W')
  expect(read(of2000, of1800)).toBe('1800..2000 W')
  expect(read()).toBeNull()
  expect(readStatedValues(database, [of2000], ['drain-pump']).heaterWatts).toBeNull()
})
