import { afterAll, beforeAll, expect, test } from 'vitest'
import type { GivenInput } from '../../shared-schemas/index.ts'
import { wordWhy } from '../../shared-schemas/word-why.ts'
import { openTestShop, type TestShop } from '../builders/open-test-shop.ts'
import { smallCatalogue } from '../builders/small-catalogue.ts'

let shop: TestShop
beforeAll(async () => {
  shop = await openTestShop(smallCatalogue)
  const lock = { model: '4821-07', part: '1E5', initials: 'AB' }
  await shop.answer('fit-check.record-fit', { ...lock, kind: 'confirmed', job: 'J1' })
  await shop.answer('fit-check.record-fit', { ...lock, kind: 'wrong-fit', reason: 'hook bent' })
})
afterAll(() => shop.close())

const check = async (question: GivenInput<'fit-check.judge-fit'>, expected: readonly string[]) =>
  expect(wordWhy(await shop.answer('fit-check.judge-fit', question))).toEqual(expected)

const isolate =
  'Mind: Isolate from the supply and prove it dead before opening. Restore earth continuity and test it before use.'
const mindLock = [
  isolate,
  'Mind: Fit only the part listed for this model: this is a safety device. Never bridge it, and test that it acts.',
]
const mindPump = [
  isolate,
  'Mind: Turn the water off, and test for leaks before leaving: water and electricity stand close here.',
  'Mind: Keep hands and clothing clear of moving parts, and never run it open.',
]
const confirmed = 'Beside it: 1E5 was fitted and confirmed in Brennick 4821-07 on 2026-11-23, job J1.'

test.each<[string, GivenInput<'fit-check.judge-fit'>, readonly string[]]>([
  [
    'a yes, with what was recorded beside it',
    { model: '4821-07', part: '1E5', made: '2010-06', serial: '150' },
    [
      '1E5: fits.',
      '1. Appliance: Brennick 4821-07, dryer.',
      '2. Number: 1E5 (Door lock).',
      '3. Said: 1E5: listed, position left (Counter notes).',
      '   only made 2010-01 to 2011-06; 2010-06 by the plate: holds',
      '   only serial 100 to 2000; 150 by the plate: holds',
      confirmed,
      'Mind: 1E5 came back as a wrong fit from Brennick 4821-07 on 2026-11-23 (AB): hook bent. Compare it with the old part before it is sold, and settle the return.',
      ...mindLock,
    ],
  ],
  [
    'a kit that holds what is replaced together with it',
    { model: 'OW 4512/01', part: 'PX 7' },
    [
      'PX 7: fits.',
      '1. Appliance: Ostrel OW 4512/01, washer.',
      '2. Number: PX 7 (Drain pump, "universal").',
      '3. Said: Drain pump: listed (Ostrel parts list).',
      '4. Said: Drain pump: listed (Dealer list).',
      '5. Side by side:',
      '   spigot: part 22 mm; appliance 22 mm by the catalogue: agrees',
      '6. Replaced together with it; catalogue, replaced together:',
      '   1 of 0048-0123 (the seals take a set): comes in this kit',
      '7. It is a kit; catalogue, kits:',
      '   2 of 0048-0123',
      ...mindPump,
    ],
  ],
  [
    'a yes by a replacement, from another number on the part',
    { model: 'OW 4512/01', part: 'B20-6A' },
    [
      'B20-6A: fits, with changes.',
      '1. Appliance: Ostrel OW 4512/01, washer.',
      '2. Number: B20-6A, in the catalogue 0048-0121.',
      '   Replaced by 0048-0122 (Drain pump, later), with PX 7; catalogue, supersessions.',
      '3. Said: Drain pump: listed (Ostrel parts list).',
      '4. Said: Drain pump: listed (Dealer list).',
      '5. Side by side:',
      '   volts: part 220..240 V; appliance 220-240 V by the catalogue: agrees',
      ...mindPump,
    ],
  ],
  [
    'a no, by what was measured',
    { model: 'OW 4512/02', part: 'PX 7', measured: { spigot: '30 mm' } },
    [
      'PX 7: does not fit.',
      '1. Appliance: Ostrel OW 4512/02, washer.',
      '2. Number: PX 7 (Drain pump, "universal").',
      '3. Said: Drain pump: listed (Dealer list).',
      '4. Side by side:',
      '   spigot: part 22 mm; appliance 30 mm measured on the old part: disagrees',
      ...mindPump,
    ],
  ],
  [
    'a no, by a condition',
    { model: '4821-07', part: '1E5', serial: '2001' },
    [
      '1E5: does not fit.',
      '1. Appliance: Brennick 4821-07, dryer.',
      '2. Number: 1E5 (Door lock).',
      '3. Said: 1E5: listed, position left (Counter notes).',
      '   only made 2010-01 to 2011-06; 2010-01 to 2011-12 by the catalogue: open',
      '   only serial 100 to 2000; 2001 by the plate: fails',
      confirmed,
      ...mindLock,
    ],
  ],
  [
    'a part that nobody has',
    { model: 'OW 4512/01', part: 'ZZ 9' },
    [
      'ZZ 9: nothing on record, which is not a yes.',
      '1. Appliance: Ostrel OW 4512/01, washer.',
      '2. Number: ZZ 9 is not in the catalogue.',
      '3. The catalogue has no part ZZ 9.',
    ],
  ],
  [
    'a model that nobody has',
    { model: 'ZZ 99999', part: '1E5' },
    [
      '1E5: nothing on record, which is not a yes.',
      '1. Appliance: no model agrees with what was read.',
      '2. Number: 1E5 (Door lock).',
      '3. The catalogue has no model that agrees with “ZZ 99999”.',
    ],
  ],
  [
    'several models, of which one source names one and another both',
    { model: 'OW 4512', part: '0048-0123' },
    [
      '0048-0123: fits.',
      '1. Appliance: 2 models left open; 2 yes, 0 no, 0 undecided.',
      '2. Number: 0048-0123 (Drain pump, last).',
      '3. Said: Drain pump: listed (Dealer list).',
      '4. Said: Drain pump: listed (Ostrel parts list; 1 of 2 models).',
      '5. It also comes in PX 7; catalogue, kits.',
      ...mindPump,
    ],
  ],
  [
    'no record',
    { model: 'OW 4512/01', part: '1E5' },
    [
      '1E5: nothing on record, which is not a yes.',
      '1. Appliance: Ostrel OW 4512/01, washer.',
      '2. Number: 1E5 (Door lock).',
      '3. Said: nothing, of the part or of its family.',
      ...mindLock,
    ],
  ],
  [
    'a number near a model',
    { model: 'OW 4513/01', part: '0048-0123' },
    [
      '0048-0123: cannot be decided yet.',
      '1. Appliance: 1 model left open; 0 yes, 0 no, 1 undecided.',
      '   No model is called OW 4513/01. Nearest: Ostrel OW 4512/01. Confirm the number before anything is ordered.',
      '2. Number: 0048-0123 (Drain pump, last).',
      '3. Said: Drain pump: listed (Ostrel parts list).',
      '4. Said: Drain pump: listed (Dealer list).',
      'To find out: Read character 6 of the model number: OW 4512/01 fits.',
      ...mindPump,
    ],
  ],
])('%s', (_title, question, expected) => check(question, expected))
