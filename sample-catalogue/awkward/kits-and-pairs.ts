import { type AwkwardCase, includes, needs, plantPart } from './awkward-case.ts'
import { makersList } from './sources.ts'

const brand = 'Brennick'
const washer = '48210751-01'
const list = makersList(brand)
const [oldBearing, bearing, seal, bearingKit, drumKit, damper, brush] = [
  '2E9000',
  '2E9001',
  '2E9002',
  '2E9003',
  '2E9004',
  '2E9005',
  '2E9006',
]

function plantFamily(family: string, name: string, does: string, hazards = 'mains|moving') {
  return { family, name, function: does, appliance_types: 'washer', hazards, safety_device: 'no' }
}

/**
 * Cases that turn on what is replaced together and on what comes in a kit. That a bearing takes its seal with it, and
 * that dampers and brushes are changed in pairs, is common practice.
 */
export const kitAndPairCases: readonly AwkwardCase[] = [
  {
    name: 'a bearing takes its seal with it',
    purpose: 'The seal does not survive the work on the bearing; the seal alone may well be replaced.',
    plants: {
      'families.csv': [
        plantFamily('tub-bearing', 'Tub bearing', 'suspension'),
        plantFamily('tub-shaft-seal', 'Tub shaft seal', 'suspension', 'mains|water|moving'),
      ],
      'parts.csv': [
        plantPart(bearing, 'tub-bearing', brand, 'Tub bearing'),
        plantPart(seal, 'tub-shaft-seal', brand, 'Tub shaft seal'),
      ],
      'fitments.csv': [
        includes({ part_number: bearing }, brand, washer, list),
        includes({ part_number: seal }, brand, washer, list),
      ],
      'replaced_together.csv': [
        {
          part_number: bearing,
          with_part: seal,
          quantity: '1',
          why: 'the seal does not survive the work on the bearing',
        },
      ],
    },
    questions: [
      { brand, model: washer, part: bearing, verdict: 'fits-with-changes', alsoNeeds: [seal] },
      { brand, model: washer, part: seal, verdict: 'fits' },
    ],
  },
  {
    name: 'a kit that already contains the part',
    purpose:
      'The old bearing gave way to a kit, and the list still says that a seal is needed: it comes in the kit, and so does all of it in the large one.',
    plants: {
      'families.csv': [plantFamily('drum-overhaul-kit', 'Drum overhaul kit', 'suspension')],
      'parts.csv': [
        plantPart(oldBearing, 'tub-bearing', brand, 'Tub bearing, to 2015'),
        plantPart(bearingKit, 'tub-bearing', brand, 'Tub bearing with shaft seal'),
        plantPart(drumKit, 'drum-overhaul-kit', brand, 'Bearing, shaft seal and two dampers'),
      ],
      'fitments.csv': [
        includes({ part_number: oldBearing }, brand, washer, list),
        includes({ part_number: drumKit }, brand, washer, list),
      ],
      'supersessions.csv': [{ old_part: oldBearing, new_part: bearingKit, way: 'one', also_needs: seal }],
      'kits.csv': [
        { kit: bearingKit, part_number: bearing, quantity: '1' },
        { kit: bearingKit, part_number: seal, quantity: '1' },
        { kit: drumKit, part_number: bearingKit, quantity: '1' },
        { kit: drumKit, part_number: damper, quantity: '2' },
      ],
      'replaced_together.csv': [{ part_number: drumKit, with_part: seal, quantity: '1' }],
    },
    questions: [
      { brand, model: washer, part: oldBearing, verdict: 'fits', current: bearingKit },
      { brand, model: washer, part: bearingKit, verdict: 'fits' },
      { brand, model: washer, part: drumKit, verdict: 'fits' },
    ],
  },
  {
    name: 'both of a pair',
    purpose:
      'Dampers are replaced in pairs, and the list counts two of them: nothing besides. Of the brush it counts one, and the second must be bought.',
    plants: {
      'families.csv': [plantFamily('carbon-brush-single', 'Carbon brush, single', 'motor and drive')],
      'parts.csv': [
        plantPart(damper, 'damper-pin-fixing', brand, 'Damper, pin fixing, 80 N', 'force=80'),
        plantPart(brush, 'carbon-brush-single', brand, 'Carbon brush, single'),
      ],
      'fitments.csv': [
        includes({ part_number: damper }, brand, washer, list, { quantity: '2' }),
        includes({ part_number: brush }, brand, washer, list),
      ],
      'model_attributes.csv': needs(brand, washer, 'damper-pin-fixing', { force: '80' }),
      'replaced_together.csv': [
        {
          part_number: brush,
          with_part: brush,
          quantity: '2',
          why: 'a new brush beside a worn one sparks',
        },
      ],
    },
    questions: [
      { brand, model: washer, part: damper, verdict: 'fits' },
      { brand, model: washer, part: brush, verdict: 'fits-with-changes', alsoNeeds: [brush] },
    ],
  },
]
