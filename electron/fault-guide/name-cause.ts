import { plainSymptom } from './match-symptom.ts'

/** The guide's cause that a job names, by its key or in the guide's own words; null where it names none of these. */
export function nameCause(
  causes: readonly string[],
  { causeKey, cause }: { readonly causeKey: string | null; readonly cause: string | null },
): string | null {
  const said = [causeKey, cause].flatMap(words => (words === null ? [] : [plainSymptom(words)]))
  return causes.find(known => said.includes(plainSymptom(known))) ?? null
}
