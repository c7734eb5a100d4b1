import type { CheckedInput, Output } from '../../shared-schemas/index.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import type { OpenModels } from '../model-lookup/open-models.ts'
import { orRefuse } from '../requests/refusal.ts'
import { type DatedQuestion, datePeriods, decideOnDay } from './date-statements.ts'
import { currentShelf, listStatementsOfTerms } from './dossier-queries.ts'
import { listFitRecords } from './fit-record-queries.ts'
import { readSaidOfModel } from './history-queries.ts'
import { listBareModels } from './model-facts-queries.ts'
import type { PartDossier } from './part-dossier.ts'
import { asReadings } from './read-question.ts'
import { findPartOrRefuse, settleModel } from './settle-subject.ts'
import { wordReasons } from './word-answer.ts'
import { wordHistory } from './word-history.ts'

type History = Output<'fit-check.read-history'>

/** What was said and recorded of a part in one model, and the verdict of a day where one is named. */
export function handleReadHistory(
  database: ReadableDatabase,
  open: OpenModels,
  question: CheckedInput<'fit-check.read-history'>,
): History {
  const { modelId, brand, modelNumber } = orRefuse(settleModel(open))
  const { partId, partNumber } = findPartOrRefuse(database, question.part)
  const said = readSaidOfModel(database, modelId)
  const periods = datePeriods(said)
  const dossier = withEveryStatement(database, currentShelf(database).dossier(partId), periods)
  const records = listFitRecords(database, [...dossier.parts.keys()]).filter(
    record => record.modelId === modelId,
  )
  const readings = asReadings(question)
  const [bare] = listBareModels(database, [modelId], readings.serial)
  if (bare === undefined) throw new Error(`an open model is in this database, but ${modelId} is not`)
  const model = { ...bare, termsIds: said.termsIds }
  return {
    model: { modelId, brand, modelNumber },
    partNumber,
    events: wordHistory(dossier, periods, records),
    asOf:
      question.asOf === undefined ? null : answerOnDay({ dossier, model, periods, readings }, question.asOf),
  }
}

/** The dossier with whatever was ever said of the model, of its parts and their families. */
function withEveryStatement(
  database: ReadableDatabase,
  dossier: PartDossier,
  periods: readonly { readonly termsId: number }[],
): PartDossier {
  const termsIds = [...new Set(periods.map(({ termsId }) => termsId))]
  const statements = listStatementsOfTerms(database, termsIds).filter(
    ({ partId, familyId }) =>
      (partId !== null && dossier.parts.has(partId)) || (familyId !== null && dossier.families.has(familyId)),
  )
  return { ...dossier, statements }
}

function answerOnDay(question: DatedQuestion, date: string): History['asOf'] {
  const { dossier, model, readings } = question
  const decision = decideOnDay(question, date)
  const reasons = wordReasons({ dossier, models: [model], readings }, decision)
  return { date, verdict: decision.verdict, reasons }
}
