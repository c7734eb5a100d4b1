import { type AwkwardCase, excludes, includes, needs, plantModel, plantPart } from './awkward-case.ts'
import { brackwaterList, makersList, tarrowList } from './sources.ts'

const straight = 'inlet-valve-single-straight'
const elbow = 'inlet-valve-single-elbow'
const trayFloat = 'float-switch-base-tray'
const sideFloat = 'float-switch-side-chamber'
const oneLevel = 'pressure-switch-one-level'
const analogue = 'pressure-switch-analogue'
// Floats and pressure switches are safety devices: a list must name their number.
const trayFloatPart = { part_number: '00480130' }
const sideFloatPart = { part_number: '00480131' }
const ostrelList = makersList('Ostrel')
const valve = { thread: 'G 3/4', bore: '10.5' }
const valveText = 'volts=220..240;thread=G 3/4;bore=10.5'
const variants4530 = ['01', '02', '03', '04', '05', '06']
const variants4540 = ['01', '02', '03', '04']

/**
 * A dishwasher fills and does not stop. Three parts may be to blame: the inlet valve, the float switch in the tray,
 * the pressure switch. Each goes into thousands of machines, and here each turns on something else.
 */
export const overFillingDishwasher: readonly AwkwardCase[] = [
  {
    name: 'plain fit',
    purpose:
      'Two sources list the valve for this very number: the calm answer, and the one most often given.',
    plants: {
      'models.csv': [
        plantModel('Ostrel', 'ODW4512/01', 'dishwasher'),
        plantModel('Ostrel', 'ODW4512/02', 'dishwasher', { made_from: '2014-03', made_to: '2015-01' }),
      ],
      'sales_names.csv': ['01', '02'].map(variant => ({
        brand: 'Ostrel',
        sales_name: 'Aqualane 44',
        model_number: `ODW4512/${variant}`,
      })),
      'parts.csv': [
        plantPart('00480121', straight, 'Ostrel', 'Inlet valve, single straight', valveText),
        plantPart('00480122', elbow, 'Ostrel', 'Inlet valve, single elbow', valveText),
      ],
      'fitments.csv': [
        includes({ family: straight }, 'Ostrel', 'ODW4512/01', tarrowList),
        includes({ family: straight }, 'Ostrel', 'ODW4512/01', ostrelList),
        includes({ family: straight }, 'Ostrel', 'ODW4512/02', ostrelList),
      ],
      'model_attributes.csv': [
        ...needs('Ostrel', 'ODW4512/01', straight, valve),
        ...needs('Ostrel', 'ODW4512/02', straight, valve),
      ],
    },
    questions: [{ brand: 'Ostrel', model: 'ODW4512/01', part: '00480121', verdict: 'fits' }],
  },
  {
    name: 'made date decides',
    purpose: 'The valve changed from straight to elbow between May and June 2014, within one service number.',
    plants: {
      'models.csv': [
        plantModel('Ostrel', 'ODW4520/02', 'dishwasher', { made_from: '2013-01', made_to: '2015-12' }),
      ],
      'sales_names.csv': [{ brand: 'Ostrel', sales_name: 'Aqualane 52', model_number: 'ODW4520/02' }],
      'fitments.csv': [
        includes({ family: straight }, 'Ostrel', 'ODW4520/02', ostrelList, { made_to: '2014-05' }),
        includes({ family: elbow }, 'Ostrel', 'ODW4520/02', ostrelList, { made_from: '2014-06' }),
      ],
      'model_attributes.csv': [
        ...needs('Ostrel', 'ODW4520/02', straight, valve),
        ...needs('Ostrel', 'ODW4520/02', elbow, valve),
      ],
    },
    questions: [
      { brand: 'Ostrel', model: 'ODW4520/02', part: '00480121', verdict: 'ask', asks: 'made' },
      {
        brand: 'Ostrel',
        model: 'ODW4520/02',
        part: '00480121',
        made: '2014',
        verdict: 'ask',
        asks: 'made',
      },
      { brand: 'Ostrel', model: 'ODW4520/02', part: '00480121', made: '2014-05', verdict: 'fits' },
      { brand: 'Ostrel', model: 'ODW4520/02', part: '00480121', made: '2014-06', verdict: 'does-not-fit' },
      { brand: 'Ostrel', model: 'ODW4520/02', part: '00480122', made: '2014-06', verdict: 'fits' },
    ],
  },
  {
    name: 'made date read from the serial',
    purpose:
      'No date on the plate, but the serial begins with year and week: 1420 is May 2014, 1430 is July.',
    plants: {},
    questions: [
      { brand: 'Ostrel', model: 'ODW4520/02', part: '00480121', serial: '142012345', verdict: 'fits' },
      {
        brand: 'Ostrel',
        model: 'ODW4520/02',
        part: '00480121',
        serial: '143012345',
        verdict: 'does-not-fit',
      },
    ],
  },
  {
    name: 'variant decides',
    purpose:
      'One sales name, six service numbers: to /03 the float sits in the base tray, from /04 in a side chamber. Only the last character matters, and often the date does instead.',
    plants: {
      'models.csv': variants4530.map((variant, index) =>
        plantModel('Ostrel', `ODW4530/${variant}`, 'dishwasher', {
          made_from: `${2011 + index}-01`,
          // One variant is still made while the next begins, so that the date alone does not always tell them apart.
          made_to: `${2012 + index}-03`,
        }),
      ),
      'sales_names.csv': variants4530.map(variant => ({
        brand: 'Ostrel',
        sales_name: 'Aqualane 45',
        model_number: `ODW4530/${variant}`,
      })),
      'parts.csv': [
        plantPart(
          '00480130',
          trayFloat,
          'Ostrel',
          'Float switch, base tray',
          'volts=220..240;terminal=4.8 mm tab',
        ),
        plantPart(
          '00480131',
          sideFloat,
          'Ostrel',
          'Float switch, side chamber',
          'volts=220..240;terminal=4.8 mm tab',
        ),
      ],
      'fitments.csv': variants4530.flatMap((variant, index) => {
        const [right, wrong] = index < 3 ? [trayFloatPart, sideFloat] : [sideFloatPart, trayFloat]
        return [
          includes(right, 'Ostrel', `ODW4530/${variant}`, ostrelList),
          excludes({ family: wrong }, 'Ostrel', `ODW4530/${variant}`, ostrelList),
        ]
      }),
      'model_attributes.csv': variants4530.flatMap((variant, index) =>
        needs('Ostrel', `ODW4530/${variant}`, index < 3 ? trayFloat : sideFloat, { terminal: '4.8 mm tab' }),
      ),
    },
    questions: [
      { brand: 'Ostrel', model: 'ODW4530', part: '00480130', verdict: 'ask', asks: 'model-number' },
      { brand: 'Ostrel', model: 'ODW4530', part: '00480130', made: '2012', verdict: 'fits' },
      { brand: 'Ostrel', model: 'ODW4530', part: '00480130', made: '2015-03', verdict: 'does-not-fit' },
      { brand: 'Ostrel', model: 'ODW4530/02', part: '00480130', verdict: 'fits' },
      { brand: 'Ostrel', model: 'ODW4530/05', part: '00480130', verdict: 'does-not-fit' },
      { brand: 'Ostrel', model: 'ODW4530/05', part: '00480131', verdict: 'fits' },
    ],
  },
  {
    name: 'fits whichever it is',
    purpose: 'The suffix cannot be read, and need not be: all four variants take the same pressure switch.',
    plants: {
      'models.csv': variants4540.map((variant, index) =>
        plantModel('Ostrel', `ODW4540/${variant}`, 'dishwasher', {
          made_from: `${2015 + index}-01`,
          made_to: `${2015 + index}-12`,
        }),
      ),
      'sales_names.csv': variants4540.map(variant => ({
        brand: 'Ostrel',
        sales_name: 'Aqualane 46',
        model_number: `ODW4540/${variant}`,
      })),
      'parts.csv': [
        plantPart(
          '00480140',
          oneLevel,
          'Ostrel',
          'Pressure switch, one level',
          'volts=220..240;terminal=6.3 mm tab',
        ),
      ],
      'fitments.csv': [
        includes({ part_number: '00480140' }, 'Ostrel', 'ODW4540/*', ostrelList),
        includes({ family: oneLevel }, 'Ostrel', 'ODW4540/02', brackwaterList),
      ],
      'model_attributes.csv': variants4540.flatMap(variant =>
        needs('Ostrel', `ODW4540/${variant}`, oneLevel, { terminal: '6.3 mm tab' }),
      ),
    },
    questions: [
      { brand: 'Ostrel', model: 'ODW4540', part: '00480140', verdict: 'fits' },
      { brand: 'Ostrel', model: 'ODW4540/03', part: '00480140', verdict: 'fits' },
    ],
  },
  {
    name: 'does not fit whichever it is',
    purpose:
      'The suffix cannot be read, and the maker rules the side-chamber float out for all four variants.',
    plants: {
      'fitments.csv': [excludes({ family: sideFloat }, 'Ostrel', 'ODW4540/*', ostrelList)],
    },
    questions: [{ brand: 'Ostrel', model: 'ODW4540', part: '00480131', verdict: 'does-not-fit' }],
  },
  {
    name: 'likeness is no proof',
    purpose:
      'Two sisters on one platform; the float switch is listed for -LS only. A safety device is never passed on by likeness, so -LR has no record.',
    plants: {
      'models.csv': [
        plantModel('Pirrell', 'PR.80.590-LS', 'dishwasher'),
        plantModel('Pirrell', 'PR.80.590-LR', 'dishwasher'),
      ],
      'fitments.csv': [includes(trayFloatPart, 'Pirrell', 'PR.80.590-LS', tarrowList)],
      'model_attributes.csv': needs('Pirrell', 'PR.80.590-LS', trayFloat, { terminal: '4.8 mm tab' }),
    },
    silent: [{ brand: 'Pirrell', model: 'PR.80.590-LR', family: trayFloat }],
    questions: [
      { brand: 'Pirrell', model: 'PR.80.590-LS', part: '00480130', verdict: 'fits' },
      { brand: 'Pirrell', model: 'PR.80.590-LR', part: '00480130', verdict: 'no-record' },
    ],
  },
  {
    name: 'listed for a time, its family for all',
    purpose:
      'The maker lists this valve to May 2014; a supplier lists its family without a date. The family does not carry the part past the date.',
    plants: {
      'models.csv': [
        plantModel('Ostrel', 'ODW4521/01', 'dishwasher', { made_from: '2013-01', made_to: '2015-12' }),
      ],
      'fitments.csv': [
        includes({ family: straight }, 'Ostrel', 'ODW4521/01', tarrowList),
        includes({ part_number: '00480121' }, 'Ostrel', 'ODW4521/01', ostrelList, { made_to: '2014-05' }),
      ],
      'model_attributes.csv': needs('Ostrel', 'ODW4521/01', straight, valve),
    },
    questions: [
      { brand: 'Ostrel', model: 'ODW4521/01', part: '00480121', verdict: 'ask', asks: 'made' },
      { brand: 'Ostrel', model: 'ODW4521/01', part: '00480121', made: '2014-05', verdict: 'fits' },
      { brand: 'Ostrel', model: 'ODW4521/01', part: '00480121', made: '2015', verdict: 'does-not-fit' },
    ],
  },
  {
    name: 'a safety device with a new number',
    purpose:
      'The list still names the old pressure switch. Today’s number takes its place, so it is listed as well as if it stood there.',
    plants: {
      'models.csv': [plantModel('Ostrel', 'ODW4550/01', 'dishwasher')],
      'parts.csv': ['00480145', '00480146'].map(number =>
        plantPart(
          number,
          analogue,
          'Ostrel',
          'Pressure switch, analogue',
          'volts=220..240;terminal=6.3 mm tab',
        ),
      ),
      'fitments.csv': [includes({ part_number: '00480145' }, 'Ostrel', 'ODW4550/01', ostrelList)],
      'model_attributes.csv': needs('Ostrel', 'ODW4550/01', analogue, { terminal: '6.3 mm tab' }),
      'supersessions.csv': [{ old_part: '00480145', new_part: '00480146', way: 'one' }],
    },
    questions: [
      {
        brand: 'Ostrel',
        model: 'ODW4550/01',
        part: '00480145',
        verdict: 'fits',
        current: '00480146',
      },
      { brand: 'Ostrel', model: 'ODW4550/01', part: '00480146', verdict: 'fits' },
    ],
  },
]
