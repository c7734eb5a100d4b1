import type { ModelFacts, PartDossier, Statement } from './part-dossier.ts'

/**
 * A dossier without what is said of none of the models: that decides nothing, and would only divide the time in which
 * they were made and the serials they may bear. Where a range of serials counts, the others stay: they may tell where
 * the serial that was read cannot lie.
 */
export function dropUnsaid(dossier: PartDossier, models: readonly ModelFacts[]): PartDossier {
  const isSaid = ({ termsId }: Statement) => models.some(({ termsIds }) => termsIds.has(termsId))
  const said = dossier.statements.filter(isSaid)
  if (said.length === dossier.statements.length) return dossier
  if (said.every(({ serial }) => serial === null)) return { ...dossier, statements: said }
  const statements = dossier.statements.filter(
    statement => statement.serial !== null || said.includes(statement),
  )
  return { ...dossier, statements }
}
