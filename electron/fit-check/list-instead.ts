import { verdictOver } from './decide-fit.ts'
import type { ModelFacts, PartDossier } from './part-dossier.ts'
import { type Readings, supposeAppliances } from './suppose-appliances.ts'

/** The first few of these parts that are current and proved to fit, without changes, whichever model it is. */
export function listInstead(
  dossiers: Iterable<PartDossier>,
  models: readonly ModelFacts[],
  readings: Readings,
): string[] {
  const proved: string[] = []
  for (const dossier of dossiers) {
    if (isProved(dossier, models, readings)) proved.push(dossier.asked.partNumber)
    if (proved.length === mostInstead) break
  }
  return proved
}

export const mostInstead = 5

/** The same as a whole decision would say, which would also word what to ask for: nobody is asked about a suggestion. */
function isProved(dossier: PartDossier, models: readonly ModelFacts[], readings: Readings): boolean {
  if (!isIncluded(dossier, models)) return false
  const alike = supposeAppliances(dossier, models, readings)
  const possibilities = alike.flatMap(ofKind => ofKind.possibilities)
  return verdictOver(possibilities) === 'fits' && possibilities[0]?.answer.current === dossier.asked.partId
}

/** Where nothing is included for any of the models, nothing can be proved, which is seen at once. */
function isIncluded({ statements }: PartDossier, models: readonly ModelFacts[]): boolean {
  return statements.some(
    ({ says, termsId }) => says === 'includes' && models.some(({ termsIds }) => termsIds.has(termsId)),
  )
}
