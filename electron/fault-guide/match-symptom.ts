import type { FaultSymptom } from '../../shared-schemas/fault-guide.ts'

/**
 * The names under which a job may have written a symptom: the guide's and the other words for it, as `plainSymptom`
 * writes them. A job that says it otherwise teaches nothing, since what it meant would be a guess.
 */
export function namesOfSymptom({ symptom, alsoSaid }: Pick<FaultSymptom, 'symptom' | 'alsoSaid'>): string[] {
  return [...new Set([symptom, ...alsoSaid].map(plainSymptom))]
}

/** The jobs that wrote this symptom, by one of its names. */
export function jobsOfSymptom<Job extends { readonly symptom: string }>(
  jobs: readonly Job[],
  said: Pick<FaultSymptom, 'symptom' | 'alsoSaid'>,
): readonly Job[] {
  const names = new Set(namesOfSymptom(said))
  return jobs.filter(({ symptom }) => names.has(plainSymptom(symptom)))
}

/** The same words however they are spaced, capitalised or ended. */
export function plainSymptom(text: string): string {
  return text
    .normalize('NFKC')
    .toLowerCase()
    .replace(/[\s.,;:!?'’"“”-]+/gu, ' ')
    .trim()
}
