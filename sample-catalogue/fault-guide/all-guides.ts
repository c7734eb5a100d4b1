import { dishwasherGuide } from './dishwasher-guide.ts'
import { dryerGuide } from './dryer-guide.ts'
import { fridgeGuide } from './fridge-guide.ts'
import type { ApplianceGuide } from './guide-entries.ts'
import { hobGuide } from './hob-guide.ts'
import { microwaveGuide } from './microwave-guide.ts'
import { ovenGuide } from './oven-guide.ts'
import { vacuumGuide } from './vacuum-guide.ts'
import { washerGuide } from './washer-guide.ts'

export const applianceGuides: readonly ApplianceGuide[] = [
  dishwasherGuide,
  washerGuide,
  dryerGuide,
  ovenGuide,
  hobGuide,
  fridgeGuide,
  microwaveGuide,
  vacuumGuide,
]
