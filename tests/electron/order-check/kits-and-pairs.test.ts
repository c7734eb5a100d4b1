import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import type { GivenInput } from '../../../shared-schemas/index.ts'
import { openTestShop, type TestShop } from '../../builders/open-test-shop.ts'

/**
 * A washer with dampers in pairs, a bearing that goes in with its seal, and a kit within a kit. That dampers and brushes
 * are changed in pairs and a bearing with its seal is common practice; every name and number is invented.
 */
const catalogue = {
  'brands.csv': 'brand\nTollbrae\n',
  'models.csv':
    'brand,model_number,appliance_type\nTollbrae,TB 77310,washer\nTollbrae,TB 77320,washer\nTollbrae,TB 77330,washer\n',
  'families.csv': `family,name,function
damper,Damper,suspension
bearing,Bearing,drum
seal,Shaft seal,drum
grease,Grease,drum
kit,Bearing kit,drum
overhaul,Overhaul kit,overhaul
`,
  'parts.csv': `part_number,family,maker,kind
D-7,damper,Tollbrae,genuine
B-1,bearing,Tollbrae,genuine
B-0,bearing,Tollbrae,genuine
S-1,seal,Tollbrae,genuine
G-1,grease,Tollbrae,genuine
K-1,kit,Tollbrae,genuine
K-5,overhaul,Tollbrae,genuine
`,
  'fitments.csv': `says,part_number,brand,model_number,quantity,source
includes,D-7,Tollbrae,TB 77310,2,Tollbrae list
includes,D-7,Tollbrae,TB 77320,1,Tollbrae list
includes,B-1,Tollbrae,TB 77310,1,Tollbrae list
includes,B-1,Tollbrae,TB 77320,1,Tollbrae list
includes,S-1,Tollbrae,TB 77310,1,Tollbrae list
includes,K-1,Tollbrae,TB 77310,1,Tollbrae list
includes,K-5,Tollbrae,TB 77310,1,Tollbrae list
excludes,B-1,Tollbrae,TB 77330,,Tollbrae list
`,
  'supersessions.csv': 'old_part,new_part,way,also_needs\nB-0,K-1,one,S-1|G-1\n',
  'kits.csv': 'kit,part_number,quantity\nK-1,B-1,1\nK-1,S-1,1\nK-5,K-1,1\nK-5,D-7,2\n',
  'replaced_together.csv': `part_number,with_part,quantity,why
D-7,D-7,2,dampers wear alike
B-1,S-1,1,the seal is destroyed in the work
K-1,S-1,1,
`,
  'locations.csv': 'location,kind,name\nSHOP,shop,Shop\n',
  'opening_stock.csv': 'location,part_number,quantity\nSHOP,G-1,1\n',
}

let shop: TestShop
beforeAll(async () => {
  shop = await openTestShop(catalogue)
})
afterAll(() => shop.close())

describe('the counter', () => {
  const judge = (part: string, model = 'TB 77310') => shop.answer('fit-check.judge-fit', { model, part })
  const check = async (part: string, model: string, expected: object) => {
    const { verdict, alsoNeeds, reasons, part: named } = await judge(part, model)
    const told = reasons.filter(({ code }) => ['replaced-together', 'comes-in-kit'].includes(code))
    expect({ verdict, alsoNeeds, current: named.current, told: told.map(({ text }) => text) }).toEqual(
      expected,
    )
    for (const { source } of told) expect(source).toMatch(/^catalogue, (replaced together|kits)$/)
  }

  test.each<[string, string, string, object]>([
    [
      'a pair that the appliance takes anyhow',
      'D-7',
      'TB 77310',
      {
        verdict: 'fits',
        alsoNeeds: [],
        current: 'D-7',
        told: [
          'Replace both together: 2 of D-7 (dampers wear alike).',
          'D-7 also comes in kit K-5 (with B-1, K-1, S-1).',
        ],
      },
    ],
    [
      'a pair of which the list counts one',
      'D-7',
      'TB 77320',
      {
        verdict: 'fits-with-changes',
        alsoNeeds: ['D-7'],
        current: 'D-7',
        told: [
          'Replace both together: 2 of D-7 (dampers wear alike).',
          'D-7 also comes in kit K-5 (with B-1, K-1, S-1).',
        ],
      },
    ],
    [
      'a bearing with its seal, and the kits that have it',
      'B-1',
      'TB 77310',
      {
        verdict: 'fits-with-changes',
        alsoNeeds: ['S-1'],
        current: 'B-1',
        told: [
          'S-1 is replaced together with B-1 (the seal is destroyed in the work).',
          'B-1 also comes in kit K-1 (with S-1).',
          'B-1 also comes in kit K-5 (with D-7, K-1, S-1).',
        ],
      },
    ],
    [
      'a seal without a bearing',
      'S-1',
      'TB 77310',
      {
        verdict: 'fits',
        alsoNeeds: [],
        current: 'S-1',
        told: ['S-1 also comes in kit K-1 (with B-1).', 'S-1 also comes in kit K-5 (with B-1, D-7, K-1).'],
      },
    ],
    [
      'a successor that is a kit needs only what does not come in it',
      'B-0',
      'TB 77310',
      {
        verdict: 'fits-with-changes',
        alsoNeeds: ['G-1'],
        current: 'K-1',
        told: [
          'S-1 is replaced together with K-1. It comes in this kit.',
          'K-1 also comes in kit K-5 (with B-1, D-7, S-1).',
        ],
      },
    ],
    [
      'a part that does not fit: no word of companions or kits',
      'B-1',
      'TB 77330',
      { verdict: 'does-not-fit', alsoNeeds: [], current: 'B-1', told: [] },
    ],
  ])('%s', (_title, part, model, expected) => check(part, model, expected))

  test('the list of what fits says the same', async () => {
    const { families } = await shop.answer('fit-check.list-fitting-parts', { model: 'TB 77310' })
    const listed = families.flatMap(({ parts }) => parts)
    for (const { partNumber, verdict, alsoNeeds, reasons } of listed) {
      const asked = await judge(partNumber)
      expect({ partNumber, verdict, alsoNeeds, reasons }).toEqual({
        partNumber,
        verdict: asked.verdict,
        alsoNeeds: asked.alsoNeeds,
        reasons: asked.reasons,
      })
    }
    expect(
      listed
        .filter(({ alsoNeeds }) => alsoNeeds.length > 0)
        .map(part => part.partNumber)
        .sort(),
    ).toEqual(['B-0', 'B-1'])
  })

  test('a load that changes a kit changes the next answer', async () => {
    const other = await openTestShop(catalogue)
    const needs = async () =>
      (await other.answer('fit-check.judge-fit', { model: 'TB 77310', part: 'B-0' })).alsoNeeds
    expect(await needs()).toEqual(['G-1'])
    await other.load({ 'kits.csv': 'kit,part_number,quantity\nK-1,G-1,1\n' })
    expect(await needs()).toEqual([])
    other.close()
  })
})

describe('the order check', () => {
  type Line = Omit<GivenInput<'order-check.check-order'>['lines'][number], 'line'>
  const own = [
    'replaced-together-short',
    'replaced-together-missing',
    'replaced-together-ready',
    'kit-contains-line',
    'comes-in-ordered-kit',
    'needed-part-missing',
    'needed-part-ordered',
    'above-appliance',
  ]
  /** Flags of kits and pairs, as `line severity code: text`. */
  const check = async (lines: readonly Line[], expected: readonly (string | RegExp)[]) => {
    const checked = await shop.answer('order-check.check-order', {
      lines: lines.map((line, at) => ({ line: at + 1, ...line })),
    })
    const found = checked.lines.flatMap(({ line, flags }) =>
      flags
        .filter(({ code }) => own.includes(code))
        .map(({ code, severity, text }) => `${line} ${severity} ${code}: ${text}`),
    )
    expect(found).toEqual(expected.map(text => expect.stringMatching(text)))
  }
  const washer = { modelNumber: 'TB 77310' }
  const another = { modelNumber: 'TB 77320' }

  test.each<[string, readonly Line[], readonly (string | RegExp)[]]>([
    [
      'one of a pair',
      [{ partNumber: 'D-7', quantity: 1, ...washer }],
      [
        /^1 note replaced-together-short: 2 of D-7 are replaced together \(dampers wear alike\); 1 on this order/,
      ],
    ],
    ['both of a pair', [{ partNumber: 'D-7', quantity: 2, ...washer }], []],
    ['both of a pair where the list counts one', [{ partNumber: 'D-7', quantity: 2, ...another }], []],
    [
      'three of a pair',
      [{ partNumber: 'D-7', quantity: 3, ...washer }],
      [/^1 caution above-appliance: One appliance takes 2; 3 are ordered/],
    ],
    [
      'a pair on two lines for one appliance',
      [
        { partNumber: 'D-7', quantity: 1, ...washer },
        { partNumber: 'D-7', quantity: 1, ...washer },
      ],
      [],
    ],
    [
      'one each for two appliances is short for both',
      [
        { partNumber: 'D-7', quantity: 1, ...washer },
        { partNumber: 'D-7', quantity: 1, ...another },
      ],
      [/^1 note replaced-together-short/, /^2 note replaced-together-short/],
    ],
    ['one for the shelf is nobody’s pair', [{ partNumber: 'D-7', quantity: 1 }], []],
    [
      'a bearing without its seal',
      [{ partNumber: 'B-1', quantity: 1, ...washer }],
      [
        /^1 note replaced-together-missing: S-1 is replaced together with B-1 \(the seal is destroyed in the work\): it is neither on this order nor in stock. Add 1.$/,
      ],
    ],
    [
      'a bearing with its seal',
      [
        { partNumber: 'B-1', quantity: 1, ...washer },
        { partNumber: 'S-1', quantity: 1, ...washer },
      ],
      [/^1 note replaced-together-ready: S-1 .*: 1 in all; line 2\.$/],
    ],
    [
      'two bearings for two appliances and one seal',
      [
        { partNumber: 'B-1', quantity: 1, ...washer },
        { partNumber: 'B-1', quantity: 1, ...another },
        { partNumber: 'S-1', quantity: 1, ...washer },
      ],
      [
        /^1 note replaced-together-missing: .*: 2 in all; line 3\.$/,
        /^2 note replaced-together-missing: .*: 2 in all; line 3\.$/,
      ],
    ],
    [
      'a kit and what comes in it, for one appliance',
      [
        { partNumber: 'K-1', quantity: 1, ...washer },
        { partNumber: 'S-1', quantity: 1, ...washer },
      ],
      [
        /^1 caution kit-contains-line: S-1 on line 2 comes in this kit/,
        /^2 caution comes-in-ordered-kit: It comes in kit K-1 on line 1/,
      ],
    ],
    [
      'a part in a kit in a kit',
      [
        { partNumber: 'S-1', quantity: 1, ...washer },
        { partNumber: 'K-5', quantity: 1, ...washer },
      ],
      [
        /^1 caution comes-in-ordered-kit: It comes in kit K-5 on line 2/,
        /^2 caution kit-contains-line: S-1 on line 1 comes in this kit/,
      ],
    ],
    [
      'a kit under its old number',
      [
        { partNumber: 'B-0', quantity: 1, ...washer },
        { partNumber: 'S-1', quantity: 1, ...washer },
        { partNumber: 'G-1', quantity: 1 },
      ],
      [
        /^1 caution kit-contains-line: S-1 on line 2/,
        /^1 note needed-part-ordered: G-1 .* line 3/,
        /^2 caution comes-in-ordered-kit: It comes in kit B-0 on line 1/,
      ],
    ],
    [
      'a kit and what comes in it, for two appliances',
      [
        { partNumber: 'K-1', quantity: 1, ...washer },
        { partNumber: 'D-7', quantity: 2, ...another },
      ],
      [],
    ],
    [
      'a kit and what comes in it, both for the shelf',
      [
        { partNumber: 'K-1', quantity: 1 },
        { partNumber: 'S-1', quantity: 1 },
      ],
      [],
    ],
    [
      'a seal that comes in a kit for another appliance serves the bearing',
      [
        { partNumber: 'B-1', quantity: 1, ...another },
        { partNumber: 'K-1', quantity: 1, ...washer },
      ],
      [/^1 note replaced-together-ready: S-1 .*: 1 in all; line 2\.$/],
    ],
    [
      'an old number on the shelf needs only what does not come in the kit that replaced it',
      [{ partNumber: 'B-0', quantity: 1 }],
      [/^1 caution needed-part-missing: G-1/],
    ],
  ])('%s', (_title, lines, expected) => check(lines, expected))

  test('a companion in stock is named with its place', async () => {
    const stocked = await openTestShop({
      ...catalogue,
      'opening_stock.csv': 'location,part_number,quantity\nSHOP,S-1,4\n',
    })
    const { lines } = await stocked.answer('order-check.check-order', {
      lines: [{ line: 1, partNumber: 'B-1', quantity: 1, ...washer }],
    })
    stocked.close()
    expect(lines[0]?.flags.find(({ code }) => code === 'replaced-together-ready')?.text).toMatch(
      /: 1 in all; 4 in Shop\.$/,
    )
  })
})
