import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest'
import { readFamily } from '../../../electron/catalogue/family-queries.ts'
import { modelsOfTerms, termsOfModels } from '../../../electron/catalogue/fitments/fitment-queries.ts'
import { changesOfRun } from '../../../electron/catalogue/fitments/undo-fitments-of.ts'
import { handleListModels } from '../../../electron/catalogue/handle-lists.ts'
import { readLowestOffers } from '../../../electron/catalogue/offer-queries.ts'
import { findPartByNumber, listNearestPartNumbers } from '../../../electron/catalogue/part-queries.ts'
import { handleJudgeFit } from '../../../electron/fit-check/handle-judge-fit.ts'
import { handleListFittedModels } from '../../../electron/fit-check/handle-list-fitted-models.ts'
import { handleListFittingParts } from '../../../electron/fit-check/handle-list-fitting-parts.ts'
import { handleReadHistory } from '../../../electron/fit-check/handle-read-history.ts'
import { handleRecordFit, handleSettleWrongFit } from '../../../electron/fit-check/handle-record-fit.ts'
import { readSisters } from '../../../electron/fit-check/sister-queries.ts'
import { modelLookupHandlers } from '../../../electron/model-lookup/handlers.ts'
import type { OpenModels } from '../../../electron/model-lookup/open-models.ts'
import { orderCheckHandlers } from '../../../electron/order-check/handlers.ts'
import { findCode } from '../../../electron/stock-ledger/find-code.ts'
import { listOnHand, readPartsOnHand } from '../../../electron/stock-ledger/on-hand-queries.ts'
import { readUsableStock } from '../../../electron/stock-ledger/usable-stock-queries.ts'
import { listLastReadings } from '../../../electron/van-counts/count-queries.ts'
import { familyCode, modelId, partId } from '../../../shared-schemas/identifiers.ts'
import { openTestCatalogue } from '../../builders/open-test-catalogue.ts'

/**
 * Every query that a question runs, as it really ran, and how SQLite means to find its rows. A question that reads a
 * large table from end to end is fast on a small shop and freezes a large one.
 */
const { database, load } = openTestCatalogue()
const plans = new Map<string, string>()

beforeAll(async () => {
  await load(smallCatalogue)
  // The first look-up reads every number into its index, and is meant to.
  findModels()
  for (const [name, ask] of Object.entries(questions))
    for (const { sql, plan } of plansOf(ask)) plans.set(`${name}: ${sql}`, plan)
})
afterAll(() => database.close())

const findModels = () =>
  modelLookupHandlers({ database })['model-lookup.find-models'](
    { text: 'QT-100', top: 10 },
    { report: () => {} },
  )
const onePart = partId.parse(1)
const oneModel: OpenModels = {
  typed: 'QT-100/1',
  key: 'QT1001',
  outcome: 'exact',
  models: [
    {
      modelId: modelId.parse(1),
      brand: 'Velmara',
      modelNumber: 'QT-100/1',
      key: 'QT1001',
      applianceType: 'washer',
    },
  ],
  agreement: 'agrees',
}
const stamp = { now: () => new Date('2026-11-23T09:00:00Z'), newId: () => returnId }
const returnId = '0190a000-0000-7000-8000-000000000001'
const question = { model: 'QT-100/1', serial: '14201', volts: '230' }

const orderCheck = orderCheckHandlers({
  database,
  ...stamp,
  newId: () => '0190a000-0000-7000-8000-000000000002',
  device: 'test-counter',
  readUsableStock: ids => readUsableStock(database, ids),
  readOpenOrders: () => new Map(),
  readLastPaid: () => new Map(),
})
const orderLines = [
  { line: 2, partNumber: 'VM-1', quantity: 1, modelNumber: 'QT-100/1', serial: '14201' },
  { line: 3, partNumber: 'ALT-9', quantity: 1 },
  { line: 4, partNumber: 'no such number', quantity: 1 },
]

const questions: Readonly<Record<string, () => unknown>> = {
  'find a model': findModels,
  'judge a fit': () => handleJudgeFit(database, oneModel, { ...question, part: 'VM-1' }),
  'list what fits': () =>
    handleListFittingParts(database, ids => readPartsOnHand(database, ids), oneModel, question),
  'record a return': () =>
    handleRecordFit(database, stamp, oneModel, {
      kind: 'wrong-fit',
      model: 'QT-100/1',
      part: 'VM-1',
      reason: 'too wide',
      initials: 'AB',
    }),
  'settle a return': () =>
    handleSettleWrongFit(database, stamp, { recordId: returnId, how: 'wrong bag', initials: 'AB' }),
  'read the history of a verdict': () =>
    handleReadHistory(database, oneModel, { ...question, part: 'VM-1', asOf: '2026-11-23' }),
  'read what is said of the platform': () => readSisters(database, [modelId.parse(1)], [1]),
  'list the models of a part': () => handleListFittedModels(database, { part: 'VM-1', words: '', from: 0 }),
  'list the models of a family': () =>
    handleListModels(database, { family: familyCode.parse('pump'), words: '', from: 0 }),
  'read a family': () => readFamily(database, 'pump'),
  'find a part by another number': () => findPartByNumber(database, 'ALT-9'),
  'find a part by nothing': () => findPartByNumber(database, 'no such number'),
  'find what a code stands for': () =>
    ['2000010000005', '12000010000002', 'BAG 7', 'shop'].map(code => findCode(database, code)),
  'read what was counted': () => listLastReadings(database, returnId),
  'read what was counted of a part': () => listLastReadings(database, returnId, onePart),
  'list near numbers': () => listNearestPartNumbers(database, 'VM-1'),
  'read the lowest offer': () => readLowestOffers(database, [onePart]),
  'list the book of a part': () => listOnHand(database, { locationId: null, partId: onePart, before: null }),
  'list the book of a location': () => listOnHand(database, { locationId: 1, partId: null, before: null }),
  'list the book of a location at the end of a day': () =>
    listOnHand(database, { locationId: 1, partId: null, before: '2026-11-24T00:00:00.000Z' }),
  'list the book of a part in a location': () =>
    listOnHand(database, { locationId: 1, partId: onePart, before: null }),
  'read where a part is': () => readPartsOnHand(database, [onePart]),
  'check an order': () =>
    orderCheck['order-check.check-order']({ lines: orderLines, supplier: 'S1' }, { report: () => {} }),
  'let a stop pass': () =>
    orderCheck['order-check.override-stop'](
      { line: { line: 1, partNumber: 'VM-9' }, code: 'part-unknown', reason: 'seen it', initials: 'AB' },
      { report: () => {} },
    ),
}

describe('no question reads a large table from end to end', () => {
  const check = (name: string) => {
    const ofQuestion = [...plans].filter(([asked]) => asked.startsWith(`${name}: `))
    expect(ofQuestion.length).toBeGreaterThan(0)
    for (const [asked, plan] of ofQuestion) expect(scannedTables(plan), `${asked}\n${plan}`).toEqual([])
  }
  test.each(Object.keys(questions))('%s', check)
})

/** Which index each searched table is searched by, and for which column. */
const indexes: Readonly<Record<string, readonly string[]>> = {
  model: [
    'model USING INTEGER PRIMARY KEY (rowid=?)',
    'model USING COVERING INDEX model_on_platform (platform=?)',
  ],
  sales_name: ['sales_name USING INDEX sales_name_of_model (model_id=?)'],
  model_attribute: ['USING PRIMARY KEY (model_id=?)'],
  family: [
    'family USING INTEGER PRIMARY KEY (rowid=?)',
    'family USING INDEX sqlite_autoindex_family_1 (family=?)',
  ],
  family_hazard: ['family_hazard USING PRIMARY KEY (family_id=?)'],
  family_attribute: ['family_attribute USING PRIMARY KEY (family_id=?)'],
  part: [
    'part USING INDEX sqlite_autoindex_part_1 (part_key=?)',
    'part USING INDEX sqlite_autoindex_part_1 (part_key>? AND part_key<?)',
    'part USING INDEX sqlite_autoindex_part_2 (gtin=?)',
    'part USING INTEGER PRIMARY KEY (rowid=?)',
    'part USING INDEX part_of_family (family_id=?)',
  ],
  part_attribute: ['part_attribute USING PRIMARY KEY (part_id=?)'],
  cross_reference: ['cross_reference USING PRIMARY KEY (number_key=?)'],
  fitment_terms: [
    'fitment_terms USING INDEX fitment_terms_of_family (family_id=?)',
    'fitment_terms USING INDEX fitment_terms_of_part (part_id=?)',
    'fitment_terms USING INTEGER PRIMARY KEY (rowid=?)',
  ],
  fitment_by_model: ['fitment_by_model USING INTEGER PRIMARY KEY (rowid=?)'],
  fitment_by_terms: ['fitment_by_terms USING PRIMARY KEY (terms_id=?)'],
  fitment_change: ['fitment_change USING PRIMARY KEY (model_id=?)'],
  load_run: [
    'load_run USING INDEX load_run_of_first_fitments (first_fitments=?)',
    'load_run USING INTEGER PRIMARY KEY (rowid=?)',
  ],
  fit_record: [
    'fit_record USING INDEX fit_record_of_part (part_id=?)',
    'fit_record USING PRIMARY KEY (record_id=?)',
  ],
  fit_record_settled: ['fit_record_settled USING PRIMARY KEY (record_id=?)'],
  supersession: [
    'supersession USING INDEX supersession_once (old_part_id=?)',
    'supersession USING INDEX supersession_of_new (new_part_id=?)',
  ],
  supersession_need: ['supersession_need USING PRIMARY KEY (supersession_id=?)'],
  kit_content: [
    'kit_content USING PRIMARY KEY (kit_part_id=?)',
    'kit_content USING COVERING INDEX kit_content_of_part (part_id=?)',
  ],
  replaced_together: ['replaced_together USING PRIMARY KEY (part_id=?)'],
  offer: ['offer USING PRIMARY KEY (part_id=?)'],
  order_check_override: ['order_check_override USING INDEX order_check_override_of_part (part_key=?)'],
  opening_stock: ['opening USING PRIMARY KEY (location_id=? AND part_id=?)'],
  bin: ['bin USING PRIMARY KEY (location_id=? AND part_id=?)'],
  part_code: ['part_code USING INDEX part_code_of_code (code=?)'],
  count_reading: [
    'count_reading USING INDEX count_reading_of_part (count_id=?)',
    'count_reading USING INDEX count_reading_of_part (count_id=? AND part_id=?)',
  ],
  count_reading_withdrawn: ['back USING PRIMARY KEY (reading_id=?)'],
  brought_forward: [
    'brought_forward USING PRIMARY KEY (location_id=?)',
    'brought_forward USING COVERING INDEX brought_forward_of_part (part_id=?)',
  ],
  movement: [
    'movement USING COVERING INDEX movement_of_part (part_id=?)',
    'movement USING INTEGER PRIMARY KEY (rowid>?)',
    'movement USING COVERING INDEX movement_in (to_location_id=?)',
    'movement USING COVERING INDEX movement_out (from_location_id=?)',
  ],
}

describe('each searched table is searched by its index', () => {
  const check = (index: string) => {
    expect([...plans.values()].join('\n')).toContain(index)
  }
  test.each(Object.values(indexes).flat())('%s', check)
})

test('fitments are found from the model and from the terms, whichever are fewer', () => {
  const search = (sql: string) => database.explain(sql, '[1]').split('\n').at(-1)
  expect(search(termsOfModels)).toBe('SEARCH fitment_by_model USING INTEGER PRIMARY KEY (rowid=?)')
  expect(search(modelsOfTerms)).toBe('SEARCH fitment_by_terms USING PRIMARY KEY (terms_id=?)')
})

test('what a run changed is found from the run, some models at a time', () => {
  expect(database.explain(changesOfRun, 1, 1, 9)).toBe(
    'SEARCH fitment_change USING INDEX fitment_change_of_run (load_run_id=? AND model_id>? AND model_id<?)',
  )
})

/** Runs a question and gives the plan of each query that it ran, with the values that it ran with. */
function plansOf(ask: () => unknown): { readonly sql: string; readonly plan: string }[] {
  const [several, single, bare] = [
    vi.spyOn(database, 'rows'),
    vi.spyOn(database, 'row'),
    vi.spyOn(database, 'tuples'),
  ]
  ask()
  const checked = [...several.mock.calls, ...single.mock.calls].map(([, sql, ...bound]) => ({ sql, bound }))
  const unchecked = bare.mock.calls.map(([sql, ...bound]) => ({ sql, bound }))
  for (const spy of [several, single, bare]) spy.mockRestore()
  return [...checked, ...unchecked].map(({ sql, bound }) => ({ sql, plan: database.explain(sql, ...bound) }))
}

/** These are a few dozen rows in any shop, or the list of ids that the question itself brings. `other` is a supplier. */
const small = [
  'stock',
  'brought_forward_through',
  'asked',
  'json_each',
  'brand',
  'location',
  'source',
  'catalogue_state',
  'date_code',
  'supplier',
  'other',
  'ranked',
]

/**
 * The tables of which a plan reads every row. A constant row and a subquery that is searched are none; a search from
 * some value on, with no other end, is one in disguise; but the movements since the balances are never many.
 */
function scannedTables(plan: string): string[] {
  const others = plan.replaceAll('SEARCH movement USING INTEGER PRIMARY KEY (rowid>?)', '')
  const scans = [...others.matchAll(/^SCAN (\S+)|^SEARCH (\S+) .*\(\w+>\?\)$/gm)]
  const tables = scans.map(match => match[1] ?? match[2] ?? '')
  return tables.filter(table => !small.includes(table) && !/^\(subquery|^CONSTANT$/.test(table))
}

const smallCatalogue = {
  'brands.csv': 'brand\nVelmara\n',
  'sales_names.csv': 'brand,sales_name,model_number\nVelmara,Brook 10,QT-100/1\n',
  'models.csv': 'brand,model_number,appliance_type,platform\nVelmara,QT-100/1,washer,washer-1\n',
  'families.csv': 'family,name,hazards\npump,Pump,mains\n',
  'attributes.csv': 'family,attribute,unit,rule,tolerance\npump,volts,V,covers,\npump,bore,mm,within,0.05\n',
  'parts.csv':
    'part_number,family,kind,attributes\nVM-1,pump,genuine,volts=220..240;bore=10\nVM-2,pump,pattern,volts=230;bore=12\nVM-3,pump,genuine,\n',
  'cross_references.csv': 'number,part_number\nALT-9,VM-1\n',
  'model_attributes.csv': 'brand,model_number,family,attribute,value\nVelmara,QT-100/1,pump,bore,10\n',
  'fitments.csv':
    'says,family,part_number,brand,model_number,source\nincludes,pump,,Velmara,QT-100/1,list\nexcludes,,VM-2,Velmara,QT-100/1,list\n',
  'supersessions.csv': 'old_part,new_part,way,also_needs\nVM-1,VM-3,one,VM-2\n',
  'date_codes.csv':
    'brand,pattern,means\nVelmara,^(?<year>\\d{2})(?<week>\\d{2})\\d$,year=2-digit;week=2-digit\n',
  'suppliers.csv': 'supplier,currency\nS1,GBP\n',
  'offers.csv': 'supplier,part_number,price\nS1,VM-1,12.50\n',
  'locations.csv': 'location,kind\nshop,shop\n',
  'opening_stock.csv': 'location,part_number,quantity\nshop,VM-1,2\n',
}
