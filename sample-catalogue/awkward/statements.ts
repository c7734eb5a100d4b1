import { type AwkwardCase, excludes, includes, needs, plantModel, plantPart } from './awkward-case.ts'
import { brackwaterList, makersList, shopRecord, tarrowList, veldkadeList } from './sources.ts'

const lock = 'washer-door-lock-slide'
const lockPart = { part_number: '1E5210' }
const lockText = 'volts=220..240;pins=5'
const pump = 'dishwasher-drain-pump-bayonet'
const pumpText = 'volts=220..240;hertz=50;terminal=6.3 mm tab'
const belt = 'washer-belt-six-rib'
const circulation = 'circulation-pump-without-heater'
const wildcardWashers = ['48210751-01', '48210751-02', '48210757-02', '48210758-03']

/** Cases that turn on who says what, and on which number replaced which. */
export const statementCases: readonly AwkwardCase[] = [
  {
    name: 'exclusion over wildcard',
    purpose:
      'A supplier lists the lock for a whole run of numbers; the shop found that one of them does not take it.',
    plants: {
      'models.csv': wildcardWashers.map(number => plantModel('Brennick', number, 'washer')),
      'parts.csv': [plantPart('1E5210', lock, 'Brennick', 'Washer door lock, slide', lockText)],
      'fitments.csv': [
        includes(lockPart, 'Brennick', '4821075?-0?', tarrowList),
        excludes(lockPart, 'Brennick', '48210757-02', shopRecord),
      ],
      'model_attributes.csv': wildcardWashers.flatMap(number =>
        needs('Brennick', number, lock, { pins: '5' }),
      ),
    },
    questions: [
      { brand: 'Brennick', model: '48210751-01', part: '1E5210', verdict: 'fits' },
      { brand: 'Brennick', model: '48210757-02', part: '1E5210', verdict: 'does-not-fit' },
    ],
  },
  {
    name: 'a safety device listed by its family only',
    purpose:
      'A supplier lists the locks of this family, the maker one of them by number. A pattern lock of the family has no record: a safety device goes in only where its own number is listed.',
    plants: {
      'models.csv': [plantModel('Brennick', '48210761-01', 'washer')],
      'parts.csv': [plantPart('SW4402E', lock, 'Stavewell', 'Washer door lock, slide', lockText, 'pattern')],
      'fitments.csv': [
        includes({ family: lock }, 'Brennick', '48210761-01', brackwaterList),
        includes(lockPart, 'Brennick', '48210761-01', makersList('Brennick')),
      ],
      'model_attributes.csv': needs('Brennick', '48210761-01', lock, { pins: '5' }),
    },
    questions: [
      { brand: 'Brennick', model: '48210761-01', part: '1E5210', verdict: 'fits' },
      { brand: 'Brennick', model: '48210761-01', part: 'SW4402E', verdict: 'no-record' },
    ],
  },
  {
    name: 'the part is named, the family is not',
    purpose:
      'The supplier rules the pump family out, but the maker names one special pump: the part outranks the family.',
    plants: {
      'models.csv': [plantModel('Wexmoor', 'WX3588/B', 'dishwasher')],
      'parts.csv': [
        plantPart('W10/5488', pump, 'Wexmoor', 'Dishwasher drain pump, bayonet, short spigot', pumpText),
        plantPart('W10/5489', pump, 'Wexmoor', 'Dishwasher drain pump, bayonet', pumpText),
      ],
      'fitments.csv': [
        excludes({ family: pump }, 'Wexmoor', 'WX3588/B', tarrowList),
        includes({ part_number: 'W10/5488' }, 'Wexmoor', 'WX3588/B', makersList('Wexmoor')),
      ],
      'model_attributes.csv': needs('Wexmoor', 'WX3588/B', pump, { terminal: '6.3 mm tab' }),
    },
    questions: [
      { brand: 'Wexmoor', model: 'WX3588/B', part: 'W10/5488', verdict: 'fits' },
      { brand: 'Wexmoor', model: 'WX3588/B', part: 'W10/5489', verdict: 'does-not-fit' },
    ],
  },
  {
    name: 'the pattern part that leaks',
    purpose:
      'The family fits; one pattern part of it was sent back from this model and is ruled out by name.',
    plants: {
      'models.csv': [
        plantModel('Wexmoor', 'WX3588/C', 'dishwasher', { made_from: '2014-03', made_to: '2016-06' }),
      ],
      'parts.csv': [
        plantPart('DR-10400', pump, 'Dalrow', 'Dishwasher drain pump, bayonet', pumpText, 'pattern'),
      ],
      'fitments.csv': [
        includes({ family: pump }, 'Wexmoor', 'WX3588/C', makersList('Wexmoor')),
        excludes({ part_number: 'DR-10400' }, 'Wexmoor', 'WX3588/C', shopRecord),
      ],
      'model_attributes.csv': needs('Wexmoor', 'WX3588/C', pump, { terminal: '6.3 mm tab' }),
    },
    questions: [
      { brand: 'Wexmoor', model: 'WX3588/C', part: 'DR-10400', verdict: 'does-not-fit' },
      { brand: 'Wexmoor', model: 'WX3588/C', part: 'W10/5489', verdict: 'fits' },
    ],
  },
  {
    name: 'sources disagree',
    purpose: 'A supplier says yes, the shop says no, both of the same family: the no wins.',
    plants: {
      'models.csv': [plantModel('Elmrath', 'E12-8844-K', 'dishwasher')],
      'fitments.csv': [
        includes({ family: pump }, 'Elmrath', 'E12-8844-K', tarrowList),
        excludes({ family: pump }, 'Elmrath', 'E12-8844-K', shopRecord),
      ],
      'model_attributes.csv': needs('Elmrath', 'E12-8844-K', pump, { terminal: '6.3 mm tab' }),
    },
    questions: [{ brand: 'Elmrath', model: 'E12-8844-K', part: 'W10/5489', verdict: 'does-not-fit' }],
  },
  {
    name: 'eight to a machine',
    purpose: 'Basket wheels: one fits, and one is not enough. Quantity per appliance is 8.',
    plants: {
      'parts.csv': [
        plantPart(
          '00480150',
          'basket-wheel-lower-basket',
          'Ostrel',
          'Basket wheel, lower basket',
          'diameter=35',
        ),
      ],
      'fitments.csv': [
        includes({ family: 'basket-wheel-lower-basket' }, 'Ostrel', 'ODW4512/01', makersList('Ostrel'), {
          quantity: '8',
        }),
      ],
      'model_attributes.csv': needs('Ostrel', 'ODW4512/01', 'basket-wheel-lower-basket', { diameter: '35' }),
    },
    questions: [{ brand: 'Ostrel', model: 'ODW4512/01', part: '00480150', verdict: 'fits' }],
  },
  {
    name: 'one unreadable character in a listed number',
    purpose:
      'A supplier writes a question mark where the finish of the door stands: both finishes are meant.',
    plants: {
      'models.csv': [
        plantModel('Tavolme', 'TVD98I1DX-2B', 'dishwasher'),
        plantModel('Tavolme', 'TVD98I1DW-2B', 'dishwasher'),
      ],
      'parts.csv': [plantPart('TQ0030005', 'spray-arm-lower', 'Tavolme', 'Spray arm, lower')],
      'fitments.csv': [includes({ family: 'spray-arm-lower' }, 'Tavolme', 'TVD98I1D?-2B', veldkadeList)],
    },
    questions: [
      { brand: 'Tavolme', model: 'TVD98I1DX-2B', part: 'TQ0030005', verdict: 'fits' },
      { brand: 'Tavolme', model: 'TVD98I1DW-2B', part: 'TQ0030005', verdict: 'fits' },
    ],
  },
  {
    name: 'four numbers for one belt',
    purpose:
      'Replaced three times. The list still carries the first number; whichever is asked for, the last is supplied.',
    plants: {
      'models.csv': [plantModel('Brennick', '48210760-01', 'washer')],
      'parts.csv': ['1E5101', '1E5102', '1E5103', '1E5104'].map(number =>
        plantPart(number, belt, 'Brennick', 'Washer drive belt, six rib, 1195 mm', 'length=1195'),
      ),
      'fitments.csv': [
        includes({ part_number: '1E5101' }, 'Brennick', '48210760-01', makersList('Brennick')),
      ],
      'model_attributes.csv': needs('Brennick', '48210760-01', belt, { length: '1195' }),
      'supersessions.csv': [
        { old_part: '1E5101', new_part: '1E5102', way: 'one' },
        { old_part: '1E5102', new_part: '1E5103', way: 'one' },
        { old_part: '1E5103', new_part: '1E5104', way: 'one' },
      ],
    },
    questions: [
      { brand: 'Brennick', model: '48210760-01', part: '1E5101', verdict: 'fits', current: '1E5104' },
      { brand: 'Brennick', model: '48210760-01', part: '1E5103', verdict: 'fits', current: '1E5104' },
      { brand: 'Brennick', model: '48210760-01', part: '1E5104', verdict: 'fits' },
    ],
  },
  {
    name: 'either for the other',
    purpose: 'Two numbers that replace each other; the list carries one of them.',
    plants: {
      'models.csv': [plantModel('Wexmoor', 'WX4588/A', 'washer')],
      'parts.csv': [
        plantPart('W10/5401', 'damper-pin-fixing', 'Wexmoor', 'Damper, pin fixing, 80 N', 'force=80'),
        plantPart('W10/5402', 'damper-pin-fixing', 'Wexmoor', 'Damper, pin fixing, 80 N', 'force=80'),
      ],
      'fitments.csv': [
        includes({ part_number: 'W10/5401' }, 'Wexmoor', 'WX4588/A', makersList('Wexmoor'), {
          quantity: '2',
        }),
      ],
      'model_attributes.csv': needs('Wexmoor', 'WX4588/A', 'damper-pin-fixing', { force: '80' }),
      'supersessions.csv': [{ old_part: 'W10/5401', new_part: 'W10/5402', way: 'both' }],
    },
    questions: [
      { brand: 'Wexmoor', model: 'WX4588/A', part: 'W10/5401', verdict: 'fits' },
      { brand: 'Wexmoor', model: 'WX4588/A', part: 'W10/5402', verdict: 'fits' },
    ],
  },
  {
    name: 'ruled out under its other number',
    purpose:
      'The family fits, but the shop had one number of a pair sent back. The other is the same thing in another box, so it is ruled out as well.',
    plants: {
      'models.csv': [plantModel('Wexmoor', 'WX4588/B', 'washer')],
      'fitments.csv': [
        includes({ family: 'damper-pin-fixing' }, 'Wexmoor', 'WX4588/B', tarrowList, { quantity: '2' }),
        excludes({ part_number: 'W10/5401' }, 'Wexmoor', 'WX4588/B', shopRecord),
      ],
      'model_attributes.csv': needs('Wexmoor', 'WX4588/B', 'damper-pin-fixing', { force: '80' }),
    },
    questions: [
      { brand: 'Wexmoor', model: 'WX4588/B', part: 'W10/5401', verdict: 'does-not-fit' },
      { brand: 'Wexmoor', model: 'WX4588/B', part: 'W10/5402', verdict: 'does-not-fit' },
    ],
  },
  {
    name: 'the successor needs a lead',
    purpose: 'The new circulation pump has another plug: it fits once the adapter lead is bought with it.',
    plants: {
      'models.csv': [plantModel('Tavolme', 'TVD99I1DX-2B', 'dishwasher')],
      'families.csv': [
        {
          family: 'adapter-lead',
          name: 'Adapter lead for pump',
          function: 'circulation',
          appliance_types: 'dishwasher',
          hazards: 'mains|water',
          safety_device: 'no',
        },
      ],
      'parts.csv': [
        plantPart('TQ0030001', circulation, 'Tavolme', 'Circulation pump', 'volts=220..240;flow=left outlet'),
        plantPart(
          'TQ0030002',
          circulation,
          'Tavolme',
          'Circulation pump, new plug',
          'volts=220..240;flow=left outlet',
        ),
        plantPart('TQ0030009', 'adapter-lead', 'Tavolme', 'Adapter lead, old loom to new pump plug'),
      ],
      'fitments.csv': [
        includes({ part_number: 'TQ0030001' }, 'Tavolme', 'TVD99I1DX-2B', makersList('Tavolme')),
      ],
      'model_attributes.csv': needs('Tavolme', 'TVD99I1DX-2B', circulation, { flow: 'left outlet' }),
      'supersessions.csv': [
        { old_part: 'TQ0030001', new_part: 'TQ0030002', way: 'one', also_needs: 'TQ0030009' },
      ],
    },
    questions: [
      {
        brand: 'Tavolme',
        model: 'TVD99I1DX-2B',
        part: 'TQ0030001',
        verdict: 'fits-with-changes',
        alsoNeeds: ['TQ0030009'],
        current: 'TQ0030002',
      },
      {
        brand: 'Tavolme',
        model: 'TVD99I1DX-2B',
        part: 'TQ0030002',
        verdict: 'fits-with-changes',
        alsoNeeds: ['TQ0030009'],
      },
    ],
  },
  {
    name: 'two successors, by date',
    purpose:
      'What replaces the old seal depends on when the machine was made: to 2012-12 one number, from 2013-01 another.',
    plants: {
      'models.csv': [
        plantModel('Hesk & Rowe', 'HR3288MK2', 'washer', { made_from: '2011-06', made_to: '2014-06' }),
      ],
      'parts.csv': ['HR/5490', 'HR/5491', 'HR/5492'].map(number =>
        plantPart(
          number,
          'washer-door-seal-plain',
          'Hesk & Rowe',
          'Washer door seal, plain, 300 mm',
          'mouth=300',
        ),
      ),
      'fitments.csv': [
        includes({ part_number: 'HR/5490' }, 'Hesk & Rowe', 'HR3288MK2', makersList('Hesk & Rowe')),
      ],
      'model_attributes.csv': needs('Hesk & Rowe', 'HR3288MK2', 'washer-door-seal-plain', { mouth: '300' }),
      'supersessions.csv': [
        { old_part: 'HR/5490', new_part: 'HR/5491', way: 'one', made_to: '2012-12' },
        { old_part: 'HR/5490', new_part: 'HR/5492', way: 'one', made_from: '2013-01' },
      ],
    },
    questions: [
      { brand: 'Hesk & Rowe', model: 'HR3288MK2', part: 'HR/5490', verdict: 'ask', asks: 'made' },
      {
        brand: 'Hesk & Rowe',
        model: 'HR3288MK2',
        part: 'HR/5490',
        made: '2012-05',
        verdict: 'fits',
        current: 'HR/5491',
      },
      {
        brand: 'Hesk & Rowe',
        model: 'HR3288MK2',
        part: 'HR/5490',
        made: '2013-05',
        verdict: 'fits',
        current: 'HR/5492',
      },
      { brand: 'Hesk & Rowe', model: 'HR3288MK2', part: 'HR/5492', verdict: 'ask', asks: 'made' },
    ],
  },
]
