import Fuse from 'fuse.js'
import type { FaultSymptom } from '../../shared-schemas/fault-guide.ts'

/**
 * Symptoms that agree with a person's words, the best first; slips of the finger forgiven, and rare words counting more
 * than those that stand in many. Without words all of them, as they are listed.
 */
export function findSymptoms(
  symptoms: readonly FaultSymptom[],
  { words, applianceType }: { readonly words: string; readonly applianceType: string },
): readonly FaultSymptom[] {
  const ofType = symptoms.filter(symptom => applianceType === '' || symptom.applianceType === applianceType)
  if (words.trim() === '') return ofType
  return new Fuse(ofType, options).search(words).map(({ item }) => item)
}

const options = {
  ignoreLocation: true,
  ignoreDiacritics: true,
  threshold: 0.3,
  useTokenSearch: true,
  keys: [
    { name: 'symptom', weight: 2 },
    { name: 'alsoSaid', weight: 2 },
    { name: 'applianceType', weight: 1 },
  ],
}
