import type { PartId } from '../../shared-schemas/identifiers.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import type { OpenModels } from '../model-lookup/open-models.ts'
import { type ConfirmedDecision, confirmModel } from './confirm-model.ts'
import { decideFit } from './decide-fit.ts'
import { currentShelf } from './dossier-queries.ts'
import { listBareModels, readDateCodesByBrand, readTermsOfModels } from './model-facts-queries.ts'
import type { ModelFacts, PartDossier } from './part-dossier.ts'
import { readDateCodes } from './read-date-code.ts'
import type { Readings } from './suppose-appliances.ts'

export interface PartQuestion {
  readonly partId: PartId
  readonly open: OpenModels
  readonly readings: Readings
}

export interface JudgedPart extends PartQuestion {
  readonly dossier: PartDossier
  readonly models: readonly ModelFacts[]
  readonly decision: ConfirmedDecision
}

/** The verdicts on many parts, each for its own appliance, in the order asked; models and terms are read once for all. */
export function judgeMany(database: ReadableDatabase, questions: readonly PartQuestion[]): JudgedPart[] {
  const shelf = currentShelf(database)
  const dossiers = questions.map(({ partId }) => shelf.dossier(partId))
  const facts = readModels(database, questions, dossiers)
  return questions.flatMap((question, at) => {
    const dossier = dossiers[at]
    if (dossier === undefined) return []
    const models = facts(question)
    const decision = confirmModel(question.open, decideFit(dossier, models, question.readings))
    return [{ ...question, dossier, models, decision }]
  })
}

/** The open models of each question, with when its own serial dates them. */
function readModels(
  database: ReadableDatabase,
  questions: readonly PartQuestion[],
  dossiers: readonly PartDossier[],
): (question: PartQuestion) => readonly ModelFacts[] {
  const modelIds = [...new Set(questions.flatMap(({ open }) => open.models.map(({ modelId }) => modelId)))]
  const termsIds = new Set(dossiers.flatMap(({ statements }) => statements.map(said => said.termsId)))
  const terms = readTermsOfModels(database, modelIds, termsIds)
  const bare = new Map(listBareModels(database, modelIds).map(model => [model.modelId, model]))
  const anySerial = questions.some(({ readings }) => readings.serial !== null)
  const codes = anySerial ? readDateCodesByBrand(database) : undefined
  return ({ open, readings: { serial } }) =>
    open.models.flatMap(({ modelId }) => {
      const model = bare.get(modelId)
      if (model === undefined) return []
      const madeBySerial = serial === null ? [] : readDateCodes(codes?.get(model.brand) ?? [], serial)
      return [{ ...model, madeBySerial, termsIds: terms.get(modelId) ?? new Set<number>() }]
    })
}
