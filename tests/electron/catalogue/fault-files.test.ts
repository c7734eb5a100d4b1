import { expect, test } from 'vitest'
import { openTestCatalogue } from '../../builders/open-test-catalogue.ts'
import {
  firstAddedLine,
  type SmallCatalogueFile,
  smallCatalogue,
  withRows,
} from '../../builders/small-catalogue.ts'

const check = (rest: string) => `washer,look at the hose,,Look,${rest}`
const coil = (rest: string) => `washer,valve coil,,Measure across it,${rest}`

const refused: readonly (readonly [
  title: string,
  file: SmallCatalogueFile,
  row: string,
  column: string,
  reason: RegExp,
])[] = [
  [
    'a part that is not named',
    'faults.csv',
    'washer,no spin,,belt,part,,,5,,',
    'families',
    /is empty: name the families/,
  ],
  [
    'a part in a cause that needs none',
    'faults.csv',
    'washer,no spin,,overloaded,no-part,,drain-pump,5,,',
    'families',
    /must be empty/,
  ],
  [
    'a family that is not there',
    'faults.csv',
    'washer,no spin,,belt,part,,belts,5,,',
    'families',
    /no family is called “belts”/,
  ],
  [
    'licensed work that does not say for what',
    'faults.csv',
    'washer,smells,,gas near,licensed,,,5,,',
    'licensed_for',
    /is empty: write gas or/,
  ],
  [
    'a licence for work that needs none',
    'faults.csv',
    'washer,no spin,,overloaded,no-part,gas,,5,,',
    'licensed_for',
    /is for causes that end in licensed/,
  ],
  [
    'steps of licensed work',
    'faults.csv',
    'washer,trips,,socket loose,licensed,fixed-wiring,,5,Tighten it,',
    'advice',
    /must be empty: work that needs a licence has no steps here/,
  ],
  [
    'a part of licensed work as if it were any part',
    'faults.csv',
    'washer,trips,,tap worn,part,,gas-tap,5,,',
    'ends_in',
    /family gas-tap carries gas, so write licensed/,
  ],
  [
    'a weight of nothing',
    'faults.csv',
    'washer,no spin,,belt,part,,drain-pump,0,,',
    'weight',
    /must be above 0/,
  ],
  [
    'an end that is none',
    'faults.csv',
    'washer,no spin,,belt,maybe,,,5,,',
    'ends_in',
    /write part or no-part or normal or licensed/,
  ],
  [
    'a cause said twice with other weights',
    'faults.csv',
    'washer,does not drain,,filter blocked,no-part,,,61,Clean it and show how,common practice',
    '',
    /contradicts line 3/,
  ],
  [
    'a check near gas',
    'fault_checks.csv',
    check(',,,fine=0.5|split=0.5,2,,gas,repairer,'),
    'hazards',
    /names gas: no check is given for such work/,
  ],
  [
    'a check behind covers for anyone',
    'fault_checks.csv',
    check(',,,fine=0.5|split=0.5,2,,mains,anyone,'),
    'competence',
    /cannot be anyone where mains is near/,
  ],
  [
    'likelihoods that do not make one',
    'fault_checks.csv',
    check(',,,fine=0.5|split=0.4,2,,,anyone,'),
    'outcomes',
    /makes 0.9 together/,
  ],
  [
    'a certain outcome',
    'fault_checks.csv',
    check(',,,fine=1|split=0,2,,,anyone,'),
    'outcomes',
    /“fine=1” is no outcome with its likelihood/,
  ],
  [
    'a check that can end in one way',
    'fault_checks.csv',
    check(',,,fine=0.9,2,,,anyone,'),
    'outcomes',
    /has one outcome/,
  ],
  [
    'an outcome twice',
    'fault_checks.csv',
    check(',,,fine=0.5|fine=0.5,2,,,anyone,'),
    'outcomes',
    /gives “fine” twice/,
  ],
  [
    'a reading without its limits',
    'fault_checks.csv',
    coil('resistance,,,within=0.5|outside=0.5,2,,mains,repairer,'),
    'expected',
    /is empty/,
  ],
  [
    'limits of nothing',
    'fault_checks.csv',
    coil(',60..90 Ω,,within=0.5|outside=0.5,2,,mains,repairer,'),
    'measure',
    /is empty, and a reading is expected/,
  ],
  [
    'a reading in the wrong unit',
    'fault_checks.csv',
    coil('resistance,60..90 V,,within=0.5|outside=0.5,2,,mains,repairer,'),
    'expected',
    /is no resistance that can be judged: write, for example, 60..90 Ω/,
  ],
  [
    'a single value without its tolerance',
    'fault_checks.csv',
    coil('resistance,3.9 kΩ,,within=0.5|outside=0.5,2,,mains,repairer,'),
    'tolerance',
    /is needed with a single value/,
  ],
  [
    'a tolerance on top of limits',
    'fault_checks.csv',
    coil('resistance,60..90 Ω,10 %,within=0.5|outside=0.5,2,,mains,repairer,'),
    'tolerance',
    /goes with a single value/,
  ],
  [
    'outcomes that arithmetic cannot give',
    'fault_checks.csv',
    coil('resistance,60..90 Ω,,good=0.5|bad=0.5,2,,mains,repairer,'),
    'outcomes',
    /must be those of a reading: within\|outside/,
  ],
  [
    'a symptom that the machine does not have',
    'fault_checks.csv',
    `washer,look,no spin,Look,,,,fine=0.5|split=0.5,2,,,anyone,`,
    'symptoms',
    /no symptom of a washer is called “no spin”/,
  ],
  [
    'what a check says that is not there',
    'fault_outcomes.csv',
    'washer,sniff,pump worn,within=0.5|outside=0.5',
    'check',
    /no check of a washer is called “sniff”/,
  ],
  [
    'what is said of a cause that is not there',
    'fault_outcomes.csv',
    'washer,open the filter,pump asleep,clear=0.5|blocked=0.5',
    'cause',
    /no cause of a washer is called “pump asleep”/,
  ],
  [
    'outcomes that the check has not',
    'fault_outcomes.csv',
    'washer,open the filter,pump worn,clear=0.5|full=0.5',
    'outcomes',
    /must be the outcomes of the check, each once: clear, blocked/,
  ],
  ['a note for nothing', 'fitting_notes.csv', 'test,Run it.,,', 'families', /is empty/],
  [
    'a note for licensed work',
    'fitting_notes.csv',
    'fitting,Grease the tap.,gas-tap,',
    'families',
    /names gas-tap, which carries gas: no notes are given/,
  ],
]

const withGas = `${smallCatalogue['families.csv']}gas-tap,Gas tap,gas,hob,gas,yes\n`

test.each(refused)('refused: %s', async (_title, file, row, column, reason) => {
  const { rejected } = await openTestCatalogue().load({
    'families.csv': withGas,
    ...without('families.csv', withRows(file, row)),
  })
  expect(rejected).toMatchObject([
    { file, line: firstAddedLine(file), column, reason: expect.stringMatching(reason) },
  ])
})

function without(file: SmallCatalogueFile, files: Record<string, string>): Record<string, string> {
  return Object.fromEntries(Object.entries(files).filter(([name]) => name !== file))
}

const guideFiles = ['faults.csv', 'fault_checks.csv', 'fault_outcomes.csv', 'fitting_notes.csv'] as const
const guideTables = [
  'fault',
  'fault_family',
  'fault_check',
  'fault_check_hazard',
  'fault_check_outcome',
  'fault_outcome',
  'fitting_note',
  'fitting_note_family',
]

test('a guide loaded again says nothing new, and its undo leaves no row of it', async () => {
  const catalogue = openTestCatalogue()
  await catalogue.load(
    Object.fromEntries(
      Object.entries(smallCatalogue).filter(([name]) => !(guideFiles as readonly string[]).includes(name)),
    ),
  )
  const guide = Object.fromEntries(guideFiles.map(name => [name, smallCatalogue[name]]))
  const first = await catalogue.load(guide)
  expect(first.rejected).toEqual([])
  const loadRunId = Math.max(...catalogue.loads().map(load => load.loadRunId))
  const again = await catalogue.load(guide)
  expect(again.files).toEqual(
    again.files.map(file => ({ ...file, added: 0, changed: 0, rejected: 0, retired: 0 })),
  )
  await catalogue.undo({ loadRunId, initials: 'AB', reason: 'a try' })
  for (const table of guideTables)
    expect([...catalogue.database.tuples(`SELECT 1 FROM ${table}`)], table).toEqual([])
})

test('a new edition takes away what it no longer says of its appliance types', async () => {
  const catalogue = openTestCatalogue()
  await catalogue.load(smallCatalogue)
  await catalogue.load(withRows('faults.csv', 'dryer,will not start,,door open,no-part,,,5,,'))
  const [header, , ...rest] = smallCatalogue['faults.csv'].split('\n')
  const report = await catalogue.load({ 'faults.csv': [header, ...rest].join('\n') }, { edition: true })
  expect(report.files).toMatchObject([{ file: 'faults.csv', unchanged: 2, retired: 1 }])
  expect([...catalogue.database.tuples('SELECT appliance_type, cause FROM fault ORDER BY fault_id')]).toEqual(
    [
      ['washer', 'filter blocked'],
      ['washer', 'waits with water on purpose'],
      ['dryer', 'door open'],
    ],
  )
})

test('where a check is given other outcomes, what was said in the old ones goes', async () => {
  const catalogue = openTestCatalogue()
  await catalogue.load(smallCatalogue)
  const changed = smallCatalogue['fault_checks.csv'].replace('clear=0.9|blocked=0.1', 'clear=0.9|full=0.1')
  await catalogue.load({ 'fault_checks.csv': changed })
  expect([...catalogue.database.tuples('SELECT DISTINCT cause FROM fault_outcome')]).toEqual([['pump worn']])
})
