import { verdictOver } from './decide-fit.ts'
import type { ModelFacts, PartDossier, Statement } from './part-dossier.ts'
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
  const heard = withoutUnsaid(dossier, models)
  if (heard.statements.every(({ says }) => says === 'excludes')) return false
  const alike = supposeAppliances(heard, models, readings)
  const possibilities = alike.flatMap(ofKind => ofKind.possibilities)
  return verdictOver(possibilities) === 'fits' && possibilities[0]?.answer.current === dossier.asked.partId
}

/**
 * What is said of none of the models decides nothing and would only divide the time in which they were made. Where a
 * range of serials counts, the others stay: they may tell where the serial that was read cannot lie.
 */
function withoutUnsaid(dossier: PartDossier, models: readonly ModelFacts[]): PartDossier {
  const isSaid = ({ termsId }: Statement) => models.some(({ termsIds }) => termsIds.has(termsId))
  const said = dossier.statements.filter(isSaid)
  if (said.every(({ serial }) => serial === null)) return { ...dossier, statements: said }
  const statements = dossier.statements.filter(statement => statement.serial !== null || isSaid(statement))
  return { ...dossier, statements }
}
