import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import type { GivenInput } from '../../../shared-schemas/index.ts'
import type { CheckedLine } from '../../../shared-schemas/order-check.ts'
import { openTestShop, type TestShop } from '../../builders/open-test-shop.ts'
import { orderShop } from '../../builders/order-shop.ts'

type Line = Omit<GivenInput<'order-check.check-order'>['lines'][number], 'line'>

let shop: TestShop
beforeAll(async () => {
  shop = await openTestShop(orderShop)
})
afterAll(() => shop.close())

interface Expected {
  readonly verdict?: CheckedLine['verdict']
  /** `severity code`, all of the first line's but the hazards that every part of its family has. */
  readonly flags: readonly string[]
  /** What the first of these flags says. */
  readonly says?: RegExp
}

/** Asks through the door; what is expected is of the order's first line. */
async function check(order: readonly Line[], expected: Expected, supplier?: string): Promise<void> {
  const checked = await shop.answer('order-check.check-order', {
    lines: order.map((line, at) => ({ line: at + 2, ...line })),
    ...(supplier === undefined ? {} : { supplier }),
  })
  const [first] = checked.lines
  const flags = (first?.flags ?? []).filter(({ code }) => !hazards.includes(code))
  expect(flags.map(({ severity, code }) => `${severity} ${code}`)).toEqual(expected.flags)
  if (expected.verdict !== undefined) expect(first?.verdict).toBe(expected.verdict)
  if (expected.says !== undefined) expect(flags[0]?.text).toMatch(expected.says)
}

const hazards = ['mains', 'water', 'moving', 'safety-device']
const dishwasher = { brand: 'Quorvane', modelNumber: 'QV-1042/A' }
const later = { brand: 'Quorvane', modelNumber: 'QV-1042/B' }
const washer = { modelNumber: 'TB 77310' }

describe.each<[string, [string, readonly Line[], Expected, string?][]]>([
  [
    'numbers and quantities as written',
    [
      [
        'a part that fits, alone',
        [{ partNumber: 'P-101', quantity: '1', ...dishwasher }],
        { verdict: 'fits', flags: [] },
      ],
      [
        'a stock line is not asked about fit',
        [{ partNumber: 'P-101', quantity: 1 }],
        { verdict: null, flags: [] },
      ],
      [
        'another number printed on the part is the part',
        [{ partNumber: 'xr 100', quantity: 1, ...dishwasher }],
        { verdict: 'fits', flags: ['caution in-stock'] },
      ],
      [
        'leading zeros count',
        [{ partNumber: '480121', quantity: 1 }],
        { flags: ['stop part-unknown'], says: /no part 480121\. Check the number/ },
      ],
      [
        'an unknown part has its nearest named',
        [{ partNumber: 'P-109', quantity: 1, ...dishwasher }],
        { verdict: 'no-record', flags: ['stop part-unknown'], says: /Compare with P-100, P-101/ },
      ],
      [
        'no part',
        [{ partNumber: ' - ', quantity: 1 }],
        { flags: ['stop part-missing'], says: /No part number/ },
      ],
      [
        'no quantity is one',
        [{ partNumber: 'P-101' }],
        { flags: ['note quantity-assumed'], says: /1 is taken/ },
      ],
      [
        'a quantity that is none',
        [{ partNumber: 'P-101', quantity: '1.5' }],
        { flags: ['stop quantity-unreadable'], says: /“1\.5” is not a whole number/ },
      ],
    ],
  ],
  [
    'fit against its appliance',
    [
      [
        'excluded by its maker',
        [{ partNumber: 'P-101', quantity: 1, ...later }],
        {
          verdict: 'does-not-fit',
          flags: ['stop does-not-fit'],
          says: /Does not fit Quorvane QV-1042\/B\. P-101: must not be used here \(Tessory list\)\./,
        },
      ],
      [
        'nothing on record is no yes',
        [{ partNumber: 'P-101', quantity: 1, ...washer }],
        { verdict: 'no-record', flags: ['stop no-record'] },
      ],
      [
        'a reading that decides is named',
        [{ partNumber: 'P-100', quantity: 9, ...later }],
        {
          verdict: 'ask',
          flags: ['stop fit-not-decided', 'note some-in-stock'],
          says: /is not decided\. Read the date of making/,
        },
      ],
      [
        'and decides once it is given',
        [{ partNumber: 'P-100', quantity: 9, made: '2016-03', ...later }],
        { verdict: 'fits', flags: ['caution above-appliance', 'note some-in-stock'] },
      ],
      [
        'a number that leaves two models open and takes the part in one',
        [{ partNumber: 'P-101', quantity: 1, modelNumber: 'QV-1042/?' }],
        { verdict: 'ask', flags: ['stop fit-not-decided'], says: /character 7 of the model number/ },
      ],
      [
        'a model that nobody knows',
        [{ partNumber: 'P-101', quantity: 1, modelNumber: 'ZZWW 99999 QQ' }],
        { verdict: 'no-record', flags: ['stop model-unknown'], says: /no model that agrees/ },
      ],
      [
        'a brand that nobody knows',
        [{ partNumber: 'P-101', quantity: 1, brand: 'Nowhere', modelNumber: 'QV-1042/A' }],
        { verdict: 'ask', flags: ['stop appliance-unreadable'], says: /No brand is called “Nowhere”/ },
      ],
      [
        'a date that is none',
        [{ partNumber: 'P-101', quantity: 1, made: '03/2016', ...dishwasher }],
        { verdict: 'ask', flags: ['stop appliance-unreadable'], says: /“03\/2016” cannot be read/ },
      ],
      [
        'a brand without a model is not checked, and says so',
        [{ partNumber: 'P-101', quantity: 1, brand: 'Quorvane' }],
        { verdict: null, flags: ['caution appliance-incomplete'] },
      ],
      [
        'a date outside the time the model was made',
        [{ partNumber: 'P-101', quantity: 1, made: '2021', ...dishwasher }],
        { flags: ['caution made-outside'] },
      ],
      [
        'more than one appliance takes',
        [{ partNumber: 'P-101', quantity: 2, ...dishwasher }],
        { flags: ['caution above-appliance'], says: /takes 1; 2 are ordered/ },
      ],
      [
        'a hinge on each side is not too many',
        [{ partNumber: 'H-1', quantity: 2, ...dishwasher }],
        { verdict: 'fits', flags: ['caution below-minimum'] },
      ],
    ],
  ],
  [
    'supersession and what else is needed',
    [
      [
        'the current number is named',
        [{ partNumber: 'S-1', quantity: 9 }],
        {
          flags: ['caution superseded', 'caution not-offered', 'note some-in-stock'],
          says: /S-1 is replaced by S-2\. Order S-2\./,
        },
      ],
      [
        'where only the newer one is listed the older is a stop, and pieces of it are not offered',
        [{ partNumber: 'S-1', quantity: 1, ...washer }],
        {
          verdict: 'fits',
          flags: ['stop superseded-not-listed', 'caution not-offered'],
          says: /only the newer number is proved to fit/,
        },
      ],
      [
        'a number that either way replaces another is current',
        [{ partNumber: 'B-1', quantity: 1, ...washer }],
        { verdict: 'fits', flags: ['caution not-offered', 'caution in-stock'] },
      ],
      [
        'a replacement from a date on is said of a stock line',
        [{ partNumber: 'P-150', quantity: 1 }],
        {
          flags: ['caution superseded-by-date', 'caution not-offered'],
          says: /by P-160 for appliances made 2017-01 on/,
        },
      ],
      [
        'a part needed besides is missing from the order',
        [{ partNumber: 'L-201', quantity: 1, ...dishwasher }],
        {
          verdict: 'fits-with-changes',
          flags: ['caution needed-part-missing', 'caution not-offered'],
          says: /K-9 is needed besides and is not on this order/,
        },
      ],
      [
        'and is a note once it is ordered',
        [
          { partNumber: 'L-201', quantity: 1, ...dishwasher },
          { partNumber: 'K-9', quantity: 5 },
        ],
        { verdict: 'fits-with-changes', flags: ['caution not-offered', 'note needed-part-ordered'] },
      ],
      [
        'fewer than are needed is not enough',
        [
          { partNumber: 'L-201', quantity: 1, ...dishwasher },
          { partNumber: 'L-201', quantity: 1, made: '2014', ...dishwasher },
          { partNumber: 'K-9', quantity: 1 },
        ],
        {
          flags: ['caution needed-part-missing', 'caution not-offered', 'note same-part-elsewhere'],
          says: /2 in all, and only 1 on line 4\. Order 2/,
        },
      ],
      [
        'the replaced number of a stock line brings its needs too',
        [{ partNumber: 'L-200', quantity: 1 }],
        { flags: ['caution superseded', 'caution needed-part-missing', 'caution not-offered'] },
      ],
    ],
  ],
  [
    'what the supplier can deliver',
    [
      [
        'not offered by the chosen one, and by whom it is',
        [{ partNumber: 'P-101', quantity: 1 }],
        { flags: ['stop not-offered-by-supplier'], says: /DALE does not offer P-101\. Order it from HOLM/ },
        'dale',
      ],
      [
        'offered by nobody',
        [{ partNumber: 'B-1', quantity: 4 }],
        { flags: ['caution not-offered', 'note some-in-stock'] },
      ],
      [
        'not a multiple of the pack',
        [{ partNumber: 'K-9', quantity: 7 }],
        { flags: ['caution not-whole-packs'], says: /in packs of 5; 7 .* Order 5 or 10/ },
      ],
      [
        'less than one pack',
        [{ partNumber: 'K-9', quantity: 2 }],
        { flags: ['caution not-whole-packs'], says: /Order 5\./ },
      ],
      ['whole packs', [{ partNumber: 'K-9', quantity: 10 }], { flags: [] }],
      [
        'below the minimum',
        [{ partNumber: 'H-1', quantity: 3 }],
        { flags: ['caution below-minimum'], says: /DALE sells H-1 from 4 pieces on/ },
      ],
      [
        'enough for one supplier is enough while none is chosen',
        [{ partNumber: 'P-100', quantity: 7 }],
        { flags: ['note some-in-stock'] },
      ],
      [
        'and not when the other one is',
        [{ partNumber: 'P-100', quantity: 7 }],
        { flags: ['caution below-minimum', 'note some-in-stock'] },
        'HOLM',
      ],
    ],
  ],
  [
    'against the other lines',
    [
      [
        'twice for stock',
        [
          { partNumber: 'P-101', quantity: 1 },
          { partNumber: 'p 101', quantity: 2 },
        ],
        {
          flags: ['caution repeated-line'],
          says: /Line 3 orders the same part for stock\. Keep only one of lines 2, 3/,
        },
      ],
      [
        'twice for the same appliance, however it is written',
        [
          { partNumber: 'P-101', quantity: 1, ...dishwasher },
          { partNumber: 'P-101', quantity: 1, modelNumber: 'qv1042a' },
        ],
        { flags: ['caution repeated-line'] },
      ],
      [
        'for two appliances it is meant',
        [
          { partNumber: 'P-101', quantity: 1, ...dishwasher },
          { partNumber: 'P-101', quantity: 1, serial: '77', ...dishwasher },
        ],
        { flags: ['note same-part-elsewhere'] },
      ],
      [
        'under an older number',
        [
          { partNumber: 'S-2', quantity: 1 },
          { partNumber: 'S-1', quantity: 1 },
        ],
        { flags: ['caution repeated-line'] },
      ],
      [
        'an interchangeable part for the same appliance',
        [
          { partNumber: 'P-101', quantity: 1, ...dishwasher },
          { partNumber: 'P-100', quantity: 1, ...dishwasher },
        ],
        {
          flags: ['caution interchangeable-on-order'],
          says: /Line 3 orders P-100 of the same family for the same appliance/,
        },
      ],
    ],
  ],
  [
    'what is here already',
    [
      [
        'enough for the job, shop before van',
        [{ partNumber: 'P-100', quantity: 1, ...dishwasher }],
        { flags: ['caution in-stock'], says: /3 in The shop, bin A1; 1 in Van 1\. Move 1 instead of buying/ },
      ],
      [
        'for stock it is a note',
        [{ partNumber: 'P-100', quantity: 1 }],
        { flags: ['note some-in-stock'], says: /^Here already: 3 in The shop/ },
      ],
      [
        'a part that stands for it counts, by its own number',
        [{ partNumber: 'B-1', quantity: 1 }],
        { flags: ['caution not-offered', 'note some-in-stock'] },
      ],
      [
        'what stands in quarantine is not here',
        [{ partNumber: 'M-1', quantity: 1 }],
        { flags: ['caution not-offered', 'caution microwave-hv'] },
      ],
    ],
  ],
])('%s', (_rule, cases) => {
  test.each(cases)('%s', (_title, order, expected, supplier) => check(order, expected, supplier))
})

test('hazards of the family are notes, licensed work and safety devices cautions', async () => {
  const { lines } = await shop.answer('order-check.check-order', {
    lines: ['P-101', 'L-201', 'M-1'].map((partNumber, line) => ({ line, partNumber, quantity: 1 })),
  })
  const said = lines.map(({ flags }) =>
    flags
      .filter(({ code }) => [...hazards, 'microwave-hv'].includes(code))
      .map(({ severity, code }) => [code, severity]),
  )
  expect(said.map(flags => Object.fromEntries(flags))).toEqual([
    { mains: 'note', water: 'note' },
    { mains: 'note', 'safety-device': 'caution' },
    { 'microwave-hv': 'caution' },
  ])
})

test('the answer says where what is here can be taken from, and what to order', async () => {
  const { lines, stops, cautions, notes } = await shop.answer('order-check.check-order', {
    lines: [
      { line: 2, partNumber: 'L-200', quantity: 1, ...dishwasher },
      { line: 3, partNumber: 'P-100', quantity: 1, modelNumber: 'QV-1042/A' },
    ],
  })
  expect(lines[0]).toMatchObject({ orderNumber: 'L-201', description: 'Door lock', moves: [] })
  expect(lines[1]).toMatchObject({
    orderNumber: 'P-100',
    model: { brand: 'Quorvane', modelNumber: 'QV-1042/A' },
    moves: [
      { partNumber: 'P-100', location: 'SHOP', name: 'The shop', bin: 'A1', quantity: 3 },
      { partNumber: 'P-100', location: 'VAN1', name: 'Van 1', bin: null, quantity: 1 },
    ],
  })
  const all = lines.flatMap(({ flags }) => flags.map(({ severity }) => severity))
  const count = (severity: string) => all.filter(found => found === severity).length
  expect([stops, cautions, notes]).toEqual(['stop', 'caution', 'note'].map(count))
})

test('a supplier that nobody knows is refused with the known ones', async () => {
  const reply = await shop.ask('order-check.check-order', {
    lines: [{ line: 1, partNumber: 'P-100' }],
    supplier: 'DALES',
  })
  expect(reply).toEqual({
    ok: false,
    problem: { code: 'supplier-not-found', typed: 'DALES', known: ['DALE', 'HOLM'] },
  })
})

test('a wrong-fit return that nobody has settled is a caution on every later order', async () => {
  const own = await openTestShop(orderShop)
  await own.answer('fit-check.record-fit', {
    kind: 'wrong-fit',
    part: 'P-101',
    model: 'QV-1042/A',
    reason: 'spigot too wide',
    initials: 'AB',
  })
  const { lines } = await own.answer('order-check.check-order', {
    lines: [
      { line: 2, partNumber: 'P-101', quantity: 1, ...dishwasher },
      { line: 3, partNumber: 'P-101', quantity: 1 },
    ],
  })
  const returned = lines.map(({ flags }) => flags.filter(({ code }) => code === 'wrong-fit-returned'))
  expect(returned).toEqual([
    [
      {
        code: 'wrong-fit-returned',
        severity: 'caution',
        text: expect.stringMatching(/came back as a wrong fit/),
      },
    ],
    [],
  ])
  own.close()
})
