import { expect, test } from 'vitest'
import { likelihoodsUnder } from '../../../electron/fault-guide/guide.ts'
import { listSymptoms, readGuide } from '../../../electron/fault-guide/guide-queries.ts'
import { openTestCatalogue } from '../../builders/open-test-catalogue.ts'
import { smallCatalogue, withRows } from '../../builders/small-catalogue.ts'

const notDraining = { applianceType: 'washer', symptom: 'does not drain' }

test('a symptom comes with the other words for it, once, whichever of its rows has them', async () => {
  const { database, load } = openTestCatalogue()
  await load(withRows('faults.csv', 'dryer,will not start,,door open,no-part,,,5,,'))
  expect(listSymptoms(database, null)).toEqual([
    { ...notDraining, alsoSaid: ['water stays in', 'pump hums'] },
    { applianceType: 'dryer', symptom: 'will not start', alsoSaid: [] },
  ])
  expect(listSymptoms(database, 'dryer').map(({ symptom }) => symptom)).toEqual(['will not start'])
})

test('causes and checks come as they are listed, with what each outcome says', async () => {
  const { database, load } = openTestCatalogue()
  await load(smallCatalogue)
  const guide = readGuide(database, notDraining)
  expect(guide?.causes.map(({ cause, endsIn, weight }) => [cause, endsIn, weight])).toEqual([
    ['pump worn', 'part', 30],
    ['filter blocked', 'no-part', 60],
    ['waits with water on purpose', 'normal', 5],
  ])
  expect(guide?.causes[0]?.families).toEqual([
    { family: 'drain-pump', name: 'Drain pump', safetyDevice: false },
  ])
  const [filter, coil] = guide?.checks ?? []
  expect(filter).toMatchObject({ check: 'open the filter', hazards: ['sharp', 'water'], measure: null })
  expect(coil).toMatchObject({ measure: 'resistance', unit: 'Ω', expected: '160..220 Ω', minutes: 8 })
  if (filter === undefined) throw new Error('the filter is checked')
  expect(likelihoodsUnder(filter, 'filter blocked')).toEqual([0.05, 0.95])
  expect(likelihoodsUnder(filter, 'pump worn')).toEqual([0.9, 0.1])
})

test('a symptom that the guide does not have is no guide', async () => {
  const { database, load } = openTestCatalogue()
  await load(smallCatalogue)
  expect(readGuide(database, { applianceType: 'washer', symptom: 'sings' })).toBeUndefined()
})

test('a check that tells nothing of the causes of a symptom is not among its checks', async () => {
  const { database, load } = openTestCatalogue()
  await load(withRows('faults.csv', 'washer,will not start,,door open,no-part,,,5,,'))
  expect(readGuide(database, { applianceType: 'washer', symptom: 'will not start' })?.checks).toEqual([])
})

test('a family that is given a licensed hazard after the guide was loaded has no steps from then on', async () => {
  const { database, load } = openTestCatalogue()
  await load(smallCatalogue)
  const changed = smallCatalogue['families.csv'].replace('mains|water|moving', 'mains|fixed-wiring')
  await load({ 'families.csv': changed })
  expect(readGuide(database, notDraining)?.causes[0]).toMatchObject({
    endsIn: 'licensed',
    licensedFor: 'fixed-wiring',
    advice: '',
  })
})
