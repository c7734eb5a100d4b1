import type { FittingFamily, FittingPart, FittingParts, Verdict } from '../../shared-schemas/fit-check.ts'
import { familyCode, type PartId } from '../../shared-schemas/identifiers.ts'
import type { PlateReadings } from '../../shared-schemas/plate-reading.ts'
import { type Offer, readLowestOffers } from '../catalogue/offer-queries.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import type { OpenModels } from '../model-lookup/open-models.ts'
import { confirmModel } from './confirm-model.ts'
import { countPerAppliance, positionsOf } from './count-per-appliance.ts'
import { decideAlike } from './decide-alike.ts'
import type { FitDecision } from './decide-fit.ts'
import { currentShelf, type DossierShelf } from './dossier-queries.ts'
import { findFamilies } from './find-families.ts'
import type { FitRecord } from './fit-record.ts'
import { listFitRecords } from './fit-record-queries.ts'
import { cautionsOfFamily } from './hazard-cautions.ts'
import { listBareModels, listFamiliesOfTerms, readAllTermsOfModels } from './model-facts-queries.ts'
import { cautionReturns, noteConfirmed, partsOfDecision } from './note-records.ts'
import type { FamilyFacts, ModelFacts, PartDossier, Statement } from './part-dossier.ts'
import { asReadings } from './read-question.ts'
import type { Readings } from './suppose-appliances.ts'
import { wordReasons } from './word-answer.ts'
import { wordAsked } from './word-asked.ts'

/** Where parts are: told by the ledger, which this capability does not know. */
export type ReadStock = (partIds: readonly PartId[]) => ReadonlyMap<PartId, Readonly<FittingPart['onHand']>>

interface ListQuestion extends PlateReadings {
  readonly function?: string | undefined
}

/** Every family of which something is said for the open models, each part of it judged over all of them. */
export function handleListFittingParts(
  database: ReadableDatabase,
  readStock: ReadStock,
  open: OpenModels,
  question: ListQuestion,
): FittingParts {
  const readings = asReadings(question)
  const models = readModelsWithTerms(database, open, readings)
  const shelf = currentShelf(database)
  const families = listFamiliesSpokenOf(database, shelf, models)
  const wanted = question.function === undefined ? families : findFamilies(families, question.function)
  const partIds = wanted.flatMap(({ parts }) => parts.map(({ partId }) => partId))
  const asked: AskedList = {
    shelf,
    open,
    models,
    readings,
    decide: decideAlike(models, readings),
    stock: readStock(partIds),
    offers: readLowestOffers(database, partIds),
    records: listFitRecords(database, withReplacements(shelf, partIds)),
    modelIds: new Set(models.map(({ modelId }) => modelId)),
  }
  return {
    outcome: open.outcome,
    models: open.models.length,
    families: wanted.map(family => judgeFamily(asked, family)).sort(byFunctionAndName),
  }
}

function readModelsWithTerms(
  database: ReadableDatabase,
  open: OpenModels,
  { serial }: Readings,
): readonly ModelFacts[] {
  const ids = open.models.map(({ modelId }) => modelId)
  const termsOfModels = readAllTermsOfModels(database, ids)
  return listBareModels(database, ids, serial).map(model => ({
    ...model,
    termsIds: termsOfModels.get(model.modelId) ?? new Set(),
  }))
}

interface SpokenOf extends FamilyFacts {
  readonly parts: readonly { readonly partId: PartId; readonly partNumber: string }[]
  readonly partWords: readonly string[]
}

function listFamiliesSpokenOf(
  database: ReadableDatabase,
  shelf: DossierShelf,
  models: readonly ModelFacts[],
): SpokenOf[] {
  const termsIds = new Set(models.flatMap(model => [...model.termsIds]))
  return listFamiliesOfTerms(database, [...termsIds]).map(id => {
    const parts = shelf.siblings(id)
    return { ...shelf.family(id), parts, partWords: parts.map(({ partNumber }) => partNumber) }
  })
}

interface AskedList {
  readonly shelf: DossierShelf
  readonly open: OpenModels
  readonly models: readonly ModelFacts[]
  readonly readings: Readings
  readonly decide: (dossier: PartDossier) => FitDecision
  readonly stock: ReturnType<ReadStock>
  readonly offers: ReadonlyMap<PartId, Offer>
  readonly records: readonly FitRecord[]
  readonly modelIds: ReadonlySet<number>
}

/** The parts with every number that may take their place. */
function withReplacements(shelf: DossierShelf, partIds: readonly PartId[]): PartId[] {
  return [...new Set(partIds.flatMap(partId => [...shelf.dossier(partId).parts.keys()]))]
}

function judgeFamily(asked: AskedList, family: SpokenOf): FittingFamily {
  const judged = family.parts.map(({ partId }) => judgePart(asked, partId))
  const parts = judged.map(({ part }) => part).sort(byVerdictAndKind)
  const allowing = judged.flatMap(({ allowing }) => allowing)
  return {
    family: familyCode.parse(family.family),
    name: family.name,
    function: family.function,
    verdict: parts[0]?.verdict ?? 'no-record',
    quantityPerAppliance: countPerAppliance(allowing),
    positions: positionsOf(allowing),
    safetyDevice: family.safetyDevice,
    cautions: cautionsOfFamily(family),
    parts,
  }
}

function judgePart(
  { shelf, open, models, readings, decide, stock, offers, records, modelIds }: AskedList,
  partId: PartId,
): { readonly part: FittingPart; readonly allowing: readonly Statement[] } {
  const dossier = shelf.dossier(partId)
  const decision = confirmModel(open, decide(dossier))
  const { partNumber, kind, maker, description } = dossier.asked
  const last = decision.chain.at(-1)
  const recorded = { records, modelIds, partIds: partsOfDecision(partId, decision) }
  const isSuperseded = last !== undefined && last !== partId
  const part: FittingPart = {
    partNumber,
    kind,
    maker,
    description,
    verdict: decision.verdict,
    reasons: [...wordReasons({ dossier, models, readings }, decision), ...noteConfirmed(recorded)],
    ask: decision.ask.map(wordAsked),
    askChosen: decision.askChosen,
    alsoNeeds: [...decision.alsoNeeds],
    supersededBy: isSuperseded ? (dossier.parts.get(last)?.partNumber ?? null) : null,
    cautions: cautionReturns(decision.verdict, recorded),
    onHand: [...(stock.get(partId) ?? [])],
    price: offers.get(partId) ?? null,
  }
  const allowing = decision.answers.filter(({ outcome }) => outcome === 'yes')
  return { part, allowing: allowing.flatMap(({ statements }) => statements) }
}

const verdictOrder: readonly Verdict[] = ['fits', 'fits-with-changes', 'ask', 'does-not-fit', 'no-record']

/** What can be sold first: by verdict, then the number that is current, then what is on hand, then genuine before pattern. */
function byVerdictAndKind(one: FittingPart, other: FittingPart): number {
  return (
    verdictOrder.indexOf(one.verdict) - verdictOrder.indexOf(other.verdict) ||
    Number(one.supersededBy !== null) - Number(other.supersededBy !== null) ||
    Number(one.onHand.length === 0) - Number(other.onHand.length === 0) ||
    (one.kind < other.kind ? -1 : one.kind > other.kind ? 1 : one.partNumber < other.partNumber ? -1 : 1)
  )
}

function byFunctionAndName(one: FittingFamily, other: FittingFamily): number {
  if (one.function !== other.function) return one.function < other.function ? -1 : 1
  return one.name < other.name ? -1 : one.name > other.name ? 1 : 0
}
