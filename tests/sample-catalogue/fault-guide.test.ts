import { expect, test } from 'vitest'
import { buildCatalogue } from '../../sample-catalogue/build-catalogue.ts'
import { symptoms } from '../../sample-catalogue/symptoms.ts'

const catalogue = buildCatalogue()
const faults = catalogue['faults.csv']
const checks = catalogue['fault_checks.csv']
const families = new Map(catalogue['families.csv'].map(row => [row.family, row]))

const symptomOf = (row: { readonly appliance_type: string; readonly symptom: string }) =>
  `${row.appliance_type}: ${row.symptom}`

test('the guide covers at least six appliance types, sixty symptoms and 250 causes', () => {
  expect(new Set(faults.map(row => row.appliance_type)).size).toBeGreaterThanOrEqual(6)
  expect(new Set(faults.map(symptomOf)).size).toBeGreaterThanOrEqual(60)
  expect(faults.length).toBeGreaterThanOrEqual(250)
})

test('it has every symptom that the jobs of the shop were called out for', () => {
  const known = new Set(faults.map(symptomOf))
  const said = Object.entries(symptoms).flatMap(([type, ofType]) =>
    ofType.map(({ says }) => symptomOf({ appliance_type: type, symptom: says })),
  )
  expect(said.filter(symptom => !known.has(symptom))).toEqual([])
})

test('it knows normal behaviour that is taken for a fault, in most appliance types', () => {
  const types = new Set(faults.filter(row => row.ends_in === 'normal').map(row => row.appliance_type))
  expect(types.size).toBeGreaterThanOrEqual(7)
  expect(faults).toContainEqual(
    expect.objectContaining({ cause: 'drains several times before it fills', ends_in: 'normal' }),
  )
})

test('a part is of a family that goes into such an appliance, and whose work needs no licence', () => {
  const licences = ['gas', 'sealed-refrigerant', 'microwave-hv', 'fixed-wiring']
  for (const row of faults)
    for (const named of row.families.split('|').filter(code => code !== '')) {
      const family = families.get(named)
      expect(family?.appliance_types.split('|'), `${symptomOf(row)}, ${named}`).toContain(row.appliance_type)
      if (row.ends_in === 'part')
        expect(licences.filter(hazard => family?.hazards.split('|').includes(hazard))).toEqual([])
    }
})

test('licensed work has no advice, and microwave ovens and hobs have no check behind a cover', () => {
  const licensed = faults.filter(row => row.ends_in === 'licensed')
  expect(new Set(licensed.map(row => row.licensed_for)).size).toBe(4)
  expect(licensed.filter(row => row.advice !== '')).toEqual([])
  const opened = checks.filter(
    row => ['microwave', 'hob'].includes(row.appliance_type) && row.competence !== 'anyone',
  )
  expect(opened).toEqual([])
})

test('every other cause says what to do or to tell the customer', () =>
  expect(faults.filter(row => row.ends_in !== 'licensed' && row.advice === '')).toEqual([]))

test('all of it is marked as common practice', () => {
  const rows = [...faults, ...checks, ...catalogue['fitting_notes.csv']]
  expect(new Set(rows.map(row => row.source))).toEqual(new Set(['common practice']))
})

test('every safety device has the note that it is fitted like for like and never bridged', () => {
  const noted = new Set(
    catalogue['fitting_notes.csv']
      .filter(row => row.note.includes('Never bridged'))
      .flatMap(row => row.families.split('|')),
  )
  const named = new Set(faults.filter(row => row.ends_in === 'part').flatMap(row => row.families.split('|')))
  const unnoted = [...named].filter(code => families.get(code)?.safety_device === 'yes' && !noted.has(code))
  expect(unnoted).toEqual([])
})
