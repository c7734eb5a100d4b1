import type { FitAnswer, Hint, Verdict } from '../../shared-schemas/fit-check.ts'
import type { FamilyId, ModelId } from '../../shared-schemas/identifiers.ts'
import type { ApplianceQuestion } from '../../shared-schemas/plate-reading.ts'
import { findPartByNumber, listNearestPartNumbers, type Part } from '../catalogue/part-queries.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import type { OpenModels } from '../model-lookup/open-models.ts'
import { cautionsOfReading } from './caution-reading.ts'
import { type ConfirmedDecision, confirmModel } from './confirm-model.ts'
import { countPerAppliance } from './count-per-appliance.ts'
import { decideFit } from './decide-fit.ts'
import { currentShelf, type DossierShelf } from './dossier-queries.ts'
import { explainVerdict } from './explain-verdict.ts'
import { listFitRecords } from './fit-record-queries.ts'
import { cautionsOfFamily } from './hazard-cautions.ts'
import { hintFromSisters, isSafetyDevice } from './hint-from-sisters.ts'
import { listInstead } from './list-instead.ts'
import {
  type BareModel,
  listBareModels,
  listFamiliesOfTerms,
  readAllTermsOfModels,
  readTermsOfModels,
} from './model-facts-queries.ts'
import { cautionReturns, noteConfirmed, partsOfDecision, type Recorded } from './note-records.ts'
import type { ModelFacts, PartDossier } from './part-dossier.ts'
import { asReadings } from './read-question.ts'
import type { Readings } from './suppose-appliances.ts'
import { wordReasons } from './word-answer.ts'
import { wordAsked } from './word-asked.ts'

/** The verdict on one part for whatever the question leaves open, worded. */
export function handleJudgeFit(
  database: ReadableDatabase,
  open: OpenModels,
  question: ApplianceQuestion & { readonly part: string },
): FitAnswer {
  const part = findPartByNumber(database, question.part)
  if (part === undefined) return unknownPart(database, open, question.part)
  if (open.models.length === 0) return unknownModel(part, open, question.part)
  const readings = asReadings(question)
  const shelf = currentShelf(database)
  const dossier = shelf.dossier(part.partId)
  const bare = listBareModels(
    database,
    open.models.map(({ modelId }) => modelId),
    readings.serial,
  )
  const models = withTerms(database, bare, [dossier])
  const decision = confirmModel(open, decideFit(dossier, models, readings))
  return wordAnswer(database, { question, part, open, shelf, bare, dossier, models, readings, decision })
}

/** The models with whichever terms of these dossiers are said of them. */
function withTerms(
  database: ReadableDatabase,
  bare: readonly BareModel[],
  dossiers: readonly PartDossier[],
): ModelFacts[] {
  const termsIds = new Set(dossiers.flatMap(({ statements }) => statements.map(said => said.termsId)))
  const ids = bare.map(({ modelId }) => modelId)
  const termsOfModels = readTermsOfModels(database, ids, termsIds)
  return bare.map(model => ({ ...model, termsIds: termsOfModels.get(model.modelId) ?? new Set() }))
}

interface Judged {
  readonly question: ApplianceQuestion & { readonly part: string }
  readonly part: Part
  readonly open: OpenModels
  readonly shelf: DossierShelf
  readonly bare: readonly BareModel[]
  readonly dossier: PartDossier
  readonly models: readonly ModelFacts[]
  readonly readings: Readings
  readonly decision: ConfirmedDecision
}

function wordAnswer(database: ReadableDatabase, judged: Judged): FitAnswer {
  const { question, part, open, dossier, models, readings, decision } = judged
  const current = decision.current === null ? undefined : dossier.parts.get(decision.current)
  const family = dossier.families.get((current ?? dossier.asked).familyId)
  const yes = decision.answers.filter(({ outcome }) => outcome === 'yes')
  const recorded = readRecorded(database, judged)
  return {
    verdict: decision.verdict,
    part: {
      typed: question.part,
      partNumber: part.partNumber,
      current: current?.partNumber ?? null,
      chain: decision.chain.map(id => dossier.parts.get(id)?.partNumber ?? ''),
      family: family?.family ?? part.family,
      description: (current ?? dossier.asked).description,
    },
    models: decision.models,
    model: onlyModel(open),
    quantityPerAppliance: countPerAppliance(yes.flatMap(({ statements }) => statements)),
    reasons: [
      ...decision.modelReasons,
      ...wordReasons({ dossier, models, readings }, decision),
      ...noteConfirmed(recorded),
    ],
    ask: decision.ask.map(wordAsked),
    askChosen: decision.askChosen,
    cautions: [
      ...cautionReturns(decision.verdict, recorded),
      ...cautionsOfReading(open, models, readings),
      ...(family ? cautionsOfFamily(family) : []),
    ],
    insteadTry: isRefused(decision.verdict) ? listInsteadOf(database, judged) : [],
    alsoNeeds: [...decision.alsoNeeds],
    hints: listHints(judged),
    why: explainVerdict({ dossier, models, readings }, decision),
  }
}

function readRecorded(database: ReadableDatabase, { part, models, decision }: Judged): Recorded {
  const partIds = partsOfDecision(part.partId, decision)
  return {
    records: listFitRecords(database, [...partIds]),
    modelIds: new Set(models.map(({ modelId }) => modelId)),
    partIds,
  }
}

function isRefused(verdict: Verdict): boolean {
  return verdict === 'does-not-fit' || verdict === 'no-record'
}

/**
 * Parts that are proved to fit in place of a refused one, genuine first: of its family, or where none of those does, of
 * another family that serves the same function in these models, as an elbow valve does for a straight one.
 */
function listInsteadOf(database: ReadableDatabase, judged: Judged): string[] {
  const { part, open, bare } = judged
  if (open.agreement === 'differs') return []
  if (bare.length > mostSearchedForOthers) return listProved(database, judged, [part.familyId])
  const models = withAllTerms(database, bare)
  const ofFamily = listProved(database, judged, [part.familyId], models)
  if (ofFamily.length > 0) return ofFamily
  return listProved(database, judged, listFamiliesOfSameFunction(database, judged, models), models)
}

/** Beyond, everything said of all the models would be read for a suggestion. */
const mostSearchedForOthers = 20

function withAllTerms(database: ReadableDatabase, bare: readonly BareModel[]): ModelFacts[] {
  const terms = readAllTermsOfModels(
    database,
    bare.map(({ modelId }) => modelId as ModelId),
  )
  return bare.map(model => ({ ...model, termsIds: terms.get(model.modelId) ?? new Set() }))
}

function listFamiliesOfSameFunction(
  database: ReadableDatabase,
  { part, shelf }: Judged,
  models: readonly ModelFacts[],
): FamilyId[] {
  const { function: does } = shelf.family(part.familyId)
  if (does === '') return []
  const termsIds = new Set(models.flatMap(model => [...model.termsIds]))
  return listFamiliesOfTerms(database, [...termsIds]).filter(
    id => id !== part.familyId && shelf.family(id).function === does,
  )
}

function listProved(
  database: ReadableDatabase,
  { part, shelf, bare, readings }: Judged,
  familyIds: readonly FamilyId[],
  withTermsRead?: readonly ModelFacts[],
): string[] {
  const others = familyIds.flatMap(id => shelf.siblings(id)).filter(({ partId }) => partId !== part.partId)
  if (others.length === 0) return []
  const dossiers = others.map(({ partId }) => shelf.dossier(partId))
  return listInstead(dossiers, withTermsRead ?? withTerms(database, bare, dossiers), readings)
}

function listHints({ open, shelf, dossier, decision }: Judged): Hint[] {
  const { verdict } = decision
  if (open.agreement === 'differs' || (verdict !== 'no-record' && verdict !== 'ask')) return []
  if (isSafetyDevice(dossier)) return []
  const modelIds = open.models.map(({ modelId }) => modelId)
  const { all, taking } = shelf.sisters.takers(dossier, modelIds)
  const others = (models: ReadonlySet<number>) =>
    models.size - modelIds.filter(modelId => models.has(modelId)).length
  return hintFromSisters(dossier, others(taking), others(all))
}

function onlyModel({ models, agreement }: OpenModels): FitAnswer['model'] {
  const [model, ...others] = models
  if (model === undefined || others.length > 0 || agreement === 'differs') return null
  const { modelId, brand, modelNumber, applianceType } = model
  return { modelId, brand, modelNumber, applianceType }
}

function unknownPart(database: ReadableDatabase, open: OpenModels, typed: string): FitAnswer {
  const nearest = listNearestPartNumbers(database, typed)
  const compare = nearest.length > 0 ? ` Compare with ${nearest.join(', ')}.` : ''
  return {
    ...nothingKnown(open, typed),
    reasons: [
      { code: 'part-not-found', text: `The catalogue has no part ${typed}.${compare}`, source: null },
    ],
  }
}

function unknownModel(part: Part, open: OpenModels, typed: string): FitAnswer {
  return {
    ...nothingKnown(open, typed),
    part: {
      ...nothingKnown(open, typed).part,
      partNumber: part.partNumber,
      family: part.family,
      description: part.description,
    },
    reasons: [
      {
        code: 'model-not-found',
        text: `The catalogue has no model that agrees with “${open.typed}”.`,
        source: null,
      },
    ],
  }
}

function nothingKnown(open: OpenModels, typed: string): FitAnswer {
  return {
    verdict: 'no-record',
    part: { typed, partNumber: null, current: null, chain: [], family: null, description: null },
    models: { open: open.models.length, yes: 0, no: 0, undecided: open.models.length },
    model: onlyModel(open),
    quantityPerAppliance: null,
    reasons: [],
    ask: [],
    askChosen: null,
    cautions: [],
    insteadTry: [],
    alsoNeeds: [],
    hints: [],
    why: null,
  }
}
