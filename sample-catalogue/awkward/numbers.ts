import { type AwkwardCase, excludes, includes, needs, plantModel, plantPart } from './awkward-case.ts'
import { makersList, tarrowList } from './sources.ts'

const straight = 'inlet-valve-single-straight'
const trayFloat = 'float-switch-base-tray'
const trayFloatPart = { part_number: '00480130' }
const sideFloat = 'float-switch-side-chamber'
const sideFloatPart = { part_number: '00480131' }
const terminal = { terminal: '4.8 mm tab' }
const valve = { thread: 'G 3/4', bore: '10.5' }

/** Cases that turn on how numbers are printed, read, typed and damaged. */
export const numberCases: readonly AwkwardCase[] = [
  {
    name: 'one number, two brands',
    purpose:
      'With its separators dropped this number is a washer of one brand and a dishwasher of another: ask the brand.',
    plants: {
      'models.csv': [
        plantModel('Brennick', '48210733-03', 'washer'),
        plantModel('Jorbe', '4821-0733-03', 'dishwasher'),
      ],
      'fitments.csv': [
        includes({ family: straight }, 'Jorbe', '4821-0733-03', tarrowList),
        excludes({ family: straight }, 'Brennick', '48210733-03', tarrowList),
      ],
      'model_attributes.csv': needs('Jorbe', '4821-0733-03', straight, valve),
    },
    questions: [
      { model: '4821073303', part: '00480121', verdict: 'ask', asks: 'brand' },
      { brand: 'Jorbe', model: '4821073303', part: '00480121', verdict: 'fits' },
      { brand: 'Brennick', model: '48210733-03', part: '00480121', verdict: 'does-not-fit' },
    ],
  },
  {
    name: 'zero or letter O, five or letter S',
    purpose: 'Three real numbers that a worn plate makes alike, with two different float switches.',
    plants: {
      'models.csv': ['1X80Z5G26B', '1X8OZ5G26B', '1X80ZSG26B'].map(number =>
        plantModel('Ixalto', number, 'dishwasher'),
      ),
      'fitments.csv': [
        includes(trayFloatPart, 'Ixalto', '1X80Z5G26B', makersList('Ixalto')),
        includes(sideFloatPart, 'Ixalto', '1X8OZ5G26B', makersList('Ixalto')),
        excludes({ family: trayFloat }, 'Ixalto', '1X8OZ5G26B', makersList('Ixalto')),
        includes(sideFloatPart, 'Ixalto', '1X80ZSG26B', makersList('Ixalto')),
        excludes({ family: trayFloat }, 'Ixalto', '1X80ZSG26B', makersList('Ixalto')),
      ],
      'model_attributes.csv': [
        ...needs('Ixalto', '1X80Z5G26B', trayFloat, terminal),
        ...needs('Ixalto', '1X8OZ5G26B', sideFloat, terminal),
        ...needs('Ixalto', '1X80ZSG26B', sideFloat, terminal),
      ],
    },
    questions: [
      { brand: 'Ixalto', model: '1X80Z5G26B', part: '00480130', verdict: 'fits' },
      { brand: 'Ixalto', model: '1X8OZ5G26B', part: '00480130', verdict: 'does-not-fit' },
      { brand: 'Ixalto', model: '1X8?Z5G26B', part: '00480130', verdict: 'ask', asks: 'model-number' },
    ],
  },
  {
    name: 'leading zeros',
    purpose: 'A spreadsheet makes 480121 of 00480121, and 480121 is another part: a salad drawer.',
    plants: {
      'models.csv': [plantModel('Ostrel', 'OFF4599/01', 'fridge')],
      'parts.csv': [plantPart('480121', 'salad-drawer-clear', 'Ostrel', 'Salad drawer, clear')],
      'fitments.csv': [
        includes({ family: 'salad-drawer-clear' }, 'Ostrel', 'OFF4599/01', makersList('Ostrel')),
      ],
    },
    questions: [
      { brand: 'Ostrel', model: 'OFF4599/01', part: '480121', verdict: 'fits' },
      { brand: 'Ostrel', model: 'ODW4512/01', part: '480121', verdict: 'no-record' },
    ],
  },
  {
    name: 'a number like a power of ten',
    purpose: 'A spreadsheet makes 100000 of 1E5. No part has the number 100000.',
    plants: {
      'models.csv': [plantModel('Brennick', '61310799-01', 'vacuum')],
      'parts.csv': [plantPart('1E5', 'vacuum-belt-flat', 'Brennick', 'Vacuum drive belt, flat')],
      'fitments.csv': [
        includes({ family: 'vacuum-belt-flat' }, 'Brennick', '61310799-01', makersList('Brennick')),
      ],
    },
    questions: [
      { brand: 'Brennick', model: '61310799-01', part: '1E5', verdict: 'fits' },
      { brand: 'Brennick', model: '61310799-01', part: '100000', verdict: 'no-record' },
    ],
  },
  {
    name: 'the other number on the label',
    purpose: 'The customer reads the sub-maker’s number off the hinge; it leads to the same part.',
    plants: { 'cross_references.csv': [{ number: 'A5B8-Z2', part_number: 'HR/5480' }] },
    questions: [{ brand: 'Hesk & Rowe', model: 'HR7288MK1', part: 'A5B8-Z2', verdict: 'fits' }],
  },
  {
    name: 'letters beyond A to Z',
    purpose: 'A brand with an umlaut and a number with blanks must be found however they are typed.',
    plants: {
      'models.csv': [plantModel('Lövane', 'LV 140-99 S', 'dishwasher')],
      'parts.csv': [plantPart('L 99 01 001', 'spray-arm-upper', 'Lövane', 'Spray arm, upper')],
      'fitments.csv': [
        includes({ family: 'spray-arm-upper' }, 'Lövane', 'LV 140-99 S', makersList('Lövane')),
      ],
    },
    questions: [
      { brand: 'Lövane', model: 'LV 140-99 S', part: 'L 99 01 001', verdict: 'fits' },
      { brand: 'Lövane', model: 'lv14099s', part: 'l9901001', verdict: 'fits' },
    ],
  },
  {
    name: 'nothing speaks of it',
    purpose: 'A dust bag for a dishwasher, and a number nobody has heard of: no record, and never a yes.',
    plants: {
      'parts.csv': [
        plantPart(
          'SN-1700-A',
          'dust-bags-cloth',
          'Snorrel',
          'Dust bags, cloth, pack of five, 46 mm',
          'collar=46',
        ),
      ],
    },
    questions: [
      { brand: 'Ostrel', model: 'ODW4512/01', part: 'SN-1700-A', verdict: 'no-record' },
      { brand: 'Ostrel', model: 'ODW4512/01', part: '00999999', verdict: 'no-record' },
    ],
  },
]
