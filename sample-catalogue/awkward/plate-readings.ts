import { type AwkwardCase, excludes, includes, needs, plantModel, plantPart } from './awkward-case.ts'
import { brackwaterList, makersList, shopRecord, tarrowList } from './sources.ts'

const element = 'washer-element-plain'
const pump = 'washer-drain-pump-with-housing'
const plug = 'fused-plug'
const capacitor = 'run-capacitor-stud'
const straight = 'inlet-valve-single-straight'
const valve = { thread: 'G 3/4', bore: '10.5' }

/** Cases that turn on what else is printed on the rating plate. */
export const plateReadingCases: readonly AwkwardCase[] = [
  {
    name: 'serial decides',
    purpose: 'The turntable shaft changed at serial 45000000; this maker prints no date.',
    plants: {
      'models.csv': [
        plantModel('Kessolm', '7.412.0358.1', 'microwave', { made_from: '2016-01', made_to: '2019-06' }),
      ],
      'sales_names.csv': [{ brand: 'Kessolm', sales_name: 'Funke-58', model_number: '7.412.0358.1' }],
      'parts.csv': [
        plantPart(
          'K7-4410-01',
          'turntable-motor-plastic-shaft',
          'Kessolm',
          'Turntable motor, plastic shaft',
          'volts=220..240;speed=2.5',
        ),
        plantPart(
          'K7-4410-02',
          'turntable-motor-metal-shaft',
          'Kessolm',
          'Turntable motor, metal shaft',
          'volts=220..240;speed=2.5',
        ),
      ],
      'fitments.csv': [
        includes(
          { family: 'turntable-motor-plastic-shaft' },
          'Kessolm',
          '7.412.0358.1',
          makersList('Kessolm'),
          {
            serial_from: '10000000',
            serial_to: '44999999',
          },
        ),
        includes(
          { family: 'turntable-motor-metal-shaft' },
          'Kessolm',
          '7.412.0358.1',
          makersList('Kessolm'),
          {
            serial_from: '45000000',
            serial_to: '99999999',
          },
        ),
      ],
      'model_attributes.csv': [
        ...needs('Kessolm', '7.412.0358.1', 'turntable-motor-plastic-shaft', { speed: '2.5' }),
        ...needs('Kessolm', '7.412.0358.1', 'turntable-motor-metal-shaft', { speed: '2.5' }),
      ],
    },
    questions: [
      { brand: 'Kessolm', model: '7.412.0358.1', part: 'K7-4410-01', verdict: 'ask', asks: 'serial' },
      { brand: 'Kessolm', model: '7.412.0358.1', part: 'K7-4410-01', serial: '44999999', verdict: 'fits' },
      {
        brand: 'Kessolm',
        model: '7.412.0358.1',
        part: 'K7-4410-01',
        serial: '45000000',
        verdict: 'does-not-fit',
      },
      { brand: 'Kessolm', model: '7.412.0358.1', part: 'K7-4410-02', serial: '45000000', verdict: 'fits' },
    ],
  },
  {
    name: 'import for 120 V',
    purpose:
      'A 120 V, 60 Hz machine that came with its owner. The usual element looks alike and must be refused.',
    plants: {
      'models.csv': [
        plantModel('Wexmoor', 'WX4521/U', 'washer', {
          made_from: '2015-01',
          made_to: '2018-12',
          volts: '120',
          hertz: '60',
        }),
      ],
      'parts.csv': [
        plantPart(
          'MB 77 001 1',
          element,
          'Marrowby',
          'Washer heating element, plain, 1800 W',
          'volts=220..240;element power=1800',
        ),
        plantPart(
          'PM7701',
          element,
          'Pattermill',
          'Washer heating element, plain, 1800 W, for 110 to 127 V',
          'volts=110..127;element power=1800',
          'pattern',
        ),
      ],
      'fitments.csv': [includes({ family: element }, 'Wexmoor', 'WX4521/U', brackwaterList)],
      'model_attributes.csv': needs('Wexmoor', 'WX4521/U', element, { 'element power': '1800' }),
    },
    questions: [
      { brand: 'Wexmoor', model: 'WX4521/U', part: 'MB 77 001 1', verdict: 'does-not-fit' },
      { brand: 'Wexmoor', model: 'WX4521/U', part: 'PM7701', verdict: 'fits' },
    ],
  },
  {
    name: 'volts not known',
    purpose: 'The catalogue does not say for which supply this number was built: the plate must be read.',
    plants: {
      'models.csv': [plantModel('Marrowby', 'MW 699 SB', 'washer', { volts: '', hertz: '' })],
      'fitments.csv': [includes({ family: element }, 'Marrowby', 'MW 699 SB', tarrowList)],
      'model_attributes.csv': needs('Marrowby', 'MW 699 SB', element, { 'element power': '1800' }),
    },
    questions: [
      { brand: 'Marrowby', model: 'MW 699 SB', part: 'MB 77 001 1', verdict: 'ask', asks: 'volts' },
      { brand: 'Marrowby', model: 'MW 699 SB', part: 'MB 77 001 1', volts: '230', verdict: 'fits' },
      { brand: 'Marrowby', model: 'MW 699 SB', part: 'MB 77 001 1', volts: '220-240', verdict: 'fits' },
      { brand: 'Marrowby', model: 'MW 699 SB', part: 'MB 77 001 1', volts: '120', verdict: 'does-not-fit' },
    ],
  },
  {
    name: 'hertz not known',
    purpose: 'A pump motor runs at the speed of the supply: with the volts read, the hertz still decide.',
    plants: {
      'parts.csv': [
        plantPart(
          'MB 77 002 2',
          pump,
          'Marrowby',
          'Washer drain pump, with housing',
          'volts=220..240;hertz=50;terminal=6.3 mm tab',
        ),
      ],
      'fitments.csv': [includes({ family: pump }, 'Marrowby', 'MW 699 SB', makersList('Marrowby'))],
      'model_attributes.csv': needs('Marrowby', 'MW 699 SB', pump, { terminal: '6.3 mm tab' }),
    },
    questions: [
      {
        brand: 'Marrowby',
        model: 'MW 699 SB',
        part: 'MB 77 002 2',
        volts: '230',
        verdict: 'ask',
        asks: 'hertz',
      },
      {
        brand: 'Marrowby',
        model: 'MW 699 SB',
        part: 'MB 77 002 2',
        volts: '230',
        hertz: '50',
        verdict: 'fits',
      },
      {
        brand: 'Marrowby',
        model: 'MW 699 SB',
        part: 'MB 77 002 2',
        volts: '230',
        hertz: '60',
        verdict: 'does-not-fit',
      },
    ],
  },
  {
    name: 'the model was never made then',
    purpose: 'The catalogue knows when the model was made, so a dated fitment is decided without asking.',
    plants: {
      'models.csv': [
        plantModel('Dovrane', '3311.288/0', 'dishwasher', { made_from: '2010-01', made_to: '2013-12' }),
        plantModel('Dovrane', '3311.288/4', 'dishwasher', { made_from: '2016-01', made_to: '2018-12' }),
      ],
      'fitments.csv': ['3311.288/0', '3311.288/4'].map(number =>
        includes({ family: straight }, 'Dovrane', number, tarrowList, { made_to: '2014-05' }),
      ),
      'model_attributes.csv': ['3311.288/0', '3311.288/4'].flatMap(number =>
        needs('Dovrane', number, straight, valve),
      ),
    },
    questions: [
      { brand: 'Dovrane', model: '3311.288/0', part: '00480121', verdict: 'fits' },
      { brand: 'Dovrane', model: '3311.288/4', part: '00480121', verdict: 'does-not-fit' },
    ],
  },
  {
    name: 'capacitance and working voltage',
    purpose: 'Within five in a hundred will run the motor; a lower working voltage will burst.',
    plants: {
      'models.csv': [plantModel('Pirrell', 'PR.82.599-LL', 'dryer')],
      'parts.csv': [
        plantPart(
          'PL880010',
          capacitor,
          'Pirrell',
          'Run capacitor 10 µF 450 V',
          'capacitance=10;working voltage=450',
        ),
        plantPart(
          'SW4400E',
          capacitor,
          'Stavewell',
          'Run capacitor 10.4 µF 450 V',
          'capacitance=10.4;working voltage=450',
          'pattern',
        ),
        plantPart(
          'PM7702',
          capacitor,
          'Pattermill',
          'Run capacitor 12.5 µF 450 V',
          'capacitance=12.5;working voltage=450',
          'pattern',
        ),
        plantPart(
          'PM7703',
          capacitor,
          'Pattermill',
          'Run capacitor 10 µF 250 V',
          'capacitance=10;working voltage=250',
          'pattern',
        ),
      ],
      'fitments.csv': [includes({ family: capacitor }, 'Pirrell', 'PR.82.599-LL', makersList('Pirrell'))],
      'model_attributes.csv': needs('Pirrell', 'PR.82.599-LL', capacitor, {
        capacitance: '10',
        'working voltage': '400',
      }),
    },
    questions: [
      { brand: 'Pirrell', model: 'PR.82.599-LL', part: 'PL880010', verdict: 'fits' },
      { brand: 'Pirrell', model: 'PR.82.599-LL', part: 'SW4400E', verdict: 'fits' },
      { brand: 'Pirrell', model: 'PR.82.599-LL', part: 'PM7702', verdict: 'does-not-fit' },
      { brand: 'Pirrell', model: 'PR.82.599-LL', part: 'PM7703', verdict: 'does-not-fit' },
    ],
  },
  {
    name: 'left and right',
    purpose: 'The door hinges of one integrated fridge: two of the left-hand kind, upper and lower.',
    plants: {
      'models.csv': [plantModel('Hesk & Rowe', 'HR7288MK1', 'fridge')],
      'parts.csv': [
        plantPart(
          'HR/5480',
          'fridge-door-hinge-integrated',
          'Hesk & Rowe',
          'Fridge door hinge, left',
          'hinge side=left',
        ),
        plantPart(
          'HR/5481',
          'fridge-door-hinge-integrated',
          'Hesk & Rowe',
          'Fridge door hinge, right',
          'hinge side=right',
        ),
      ],
      'fitments.csv': ['upper', 'lower'].map(position =>
        includes(
          { family: 'fridge-door-hinge-integrated' },
          'Hesk & Rowe',
          'HR7288MK1',
          makersList('Hesk & Rowe'),
          { position },
        ),
      ),
      'model_attributes.csv': needs('Hesk & Rowe', 'HR7288MK1', 'fridge-door-hinge-integrated', {
        'hinge side': 'left',
      }),
    },
    questions: [
      { brand: 'Hesk & Rowe', model: 'HR7288MK1', part: 'HR/5480', verdict: 'fits' },
      { brand: 'Hesk & Rowe', model: 'HR7288MK1', part: 'HR/5481', verdict: 'does-not-fit' },
    ],
  },
  {
    name: 'the plug that goes on nearly everything',
    purpose:
      'The black 13 A plug is listed by number for every model of every brand, ruled out for hobs, which are wired in, and too small above 3000 W. Of the white one only the family is listed, which for a safety device is no record.',
    plants: {
      'models.csv': [
        plantModel('Wexmoor', 'WX6588/A', 'oven', { watts: '3300' }),
        plantModel('Wexmoor', 'WX6588/B', 'oven', {
          made_from: '2014-03',
          made_to: '2016-01',
          watts: '2800',
        }),
        plantModel('Wexmoor', 'WX6588/C', 'oven', { made_from: '2016-02', made_to: '2017-12', watts: '' }),
        plantModel('Wexmoor', 'WX7588/A', 'hob', { watts: '7200' }),
      ],
      'families.csv': [
        {
          family: plug,
          name: 'Fused plug, 13 A',
          function: 'earth and supply',
          appliance_types: 'dishwasher|washer|dryer|oven|hob|fridge|microwave|vacuum',
          hazards: 'mains',
          safety_device: 'yes',
        },
      ],
      'attributes.csv': [
        { family: plug, attribute: 'volts', unit: 'V', rule: 'covers' },
        { family: plug, attribute: 'watts', unit: 'W', rule: 'at-least' },
      ],
      'parts.csv': [
        plantPart(
          'DR-10401',
          plug,
          'Dalrow',
          'Fused plug, 13 A, black',
          'volts=220..240;watts=3000',
          'pattern',
        ),
        plantPart(
          'SW4401E',
          plug,
          'Stavewell',
          'Fused plug, 13 A, white',
          'volts=220..240;watts=3000',
          'pattern',
        ),
      ],
      'fitments.csv': [excludes({ part_number: 'DR-10401' }, 'Wexmoor', 'WX7588/A', shopRecord)],
    },
    questions: [
      { brand: 'Wexmoor', model: 'WX6588/B', part: 'DR-10401', verdict: 'fits' },
      { brand: 'Wexmoor', model: 'WX6588/A', part: 'DR-10401', verdict: 'does-not-fit' },
      { brand: 'Wexmoor', model: 'WX7588/A', part: 'DR-10401', verdict: 'does-not-fit' },
      { brand: 'Wexmoor', model: 'WX6588/C', part: 'DR-10401', verdict: 'ask', asks: 'watts' },
      { brand: 'Wexmoor', model: 'WX6588/B', part: 'SW4401E', verdict: 'no-record' },
    ],
  },
  {
    name: 'gas',
    purpose:
      'The maker lists both taps, since a licensed person can convert the hob; this one burns natural gas, so the tap for bottled gas is the wrong one. A caution with either.',
    plants: {
      'models.csv': [plantModel('Ostrel', 'OGH4588/01', 'hob', { platform: 'hob-2' })],
      'parts.csv': [
        plantPart(
          '00480160',
          'gas-valve-small-burner',
          'Ostrel',
          'Gas tap valve, natural gas',
          'gas=natural',
        ),
        plantPart('00480161', 'gas-valve-small-burner', 'Ostrel', 'Gas tap valve, LPG', 'gas=LPG'),
      ],
      'fitments.csv': [
        includes({ part_number: '00480160' }, 'Ostrel', 'OGH4588/01', makersList('Ostrel')),
        includes({ part_number: '00480161' }, 'Ostrel', 'OGH4588/01', makersList('Ostrel')),
      ],
      'model_attributes.csv': needs('Ostrel', 'OGH4588/01', 'gas-valve-small-burner', { gas: 'natural' }),
    },
    questions: [
      { brand: 'Ostrel', model: 'OGH4588/01', part: '00480160', verdict: 'fits' },
      { brand: 'Ostrel', model: 'OGH4588/01', part: '00480161', verdict: 'does-not-fit' },
    ],
  },
  {
    name: 'microwave high voltage',
    purpose: 'Fits, and must still come with the caution that only a certified person may fit it.',
    plants: {
      'parts.csv': [
        plantPart(
          'K7-4420-09',
          'magnetron-side-terminals',
          'Kessolm',
          'Magnetron, side terminals, 800 W',
          'output power=800',
        ),
      ],
      'fitments.csv': [
        includes({ family: 'magnetron-side-terminals' }, 'Kessolm', '7.412.0358.1', makersList('Kessolm')),
      ],
      'model_attributes.csv': needs('Kessolm', '7.412.0358.1', 'magnetron-side-terminals', {
        'output power': '800',
      }),
    },
    questions: [{ brand: 'Kessolm', model: '7.412.0358.1', part: 'K7-4420-09', verdict: 'fits' }],
  },
]
