import type { Caution } from '../../shared-schemas/fit-check.ts'
import { hazardWords, safetyDeviceWords } from '../../shared-schemas/hazard-words.ts'
import type { FamilyFacts } from './part-dossier.ts'

/** The cautions of a family, licensed work first. They are shown, never dismissed. */
export function cautionsOfFamily({ hazards, safetyDevice }: FamilyFacts): Caution[] {
  const ofHazards = Object.entries(hazardWords)
    .filter(([hazard]) => hazards.includes(hazard))
    .map(([hazard, text]) => ({ code: hazard, text }))
  return safetyDevice ? [...ofHazards, safetyDeviceCaution] : ofHazards
}

const safetyDeviceCaution: Caution = { code: 'safety-device', text: safetyDeviceWords }
