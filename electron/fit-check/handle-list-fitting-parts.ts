import type { FittingFamily, FittingPart, FittingParts, Verdict } from '../../shared-schemas/fit-check.ts'
import { type FamilyCode, type FamilyId, familyCode, type PartId } from '../../shared-schemas/identifiers.ts'
import type { PlateReadings } from '../../shared-schemas/plate-reading.ts'
import { readLowestOffer } from '../catalogue/offer-queries.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import type { OpenModels } from '../model-lookup/open-models.ts'
import { confirmModel } from './confirm-model.ts'
import { countPerAppliance, positionsOf } from './count-per-appliance.ts'
import { decideFit } from './decide-fit.ts'
import { readDossier, readFamilyFacts } from './dossier-queries.ts'
import { findFamilies } from './find-families.ts'
import { cautionsOfFamily } from './hazard-cautions.ts'
import {
  type BareModel,
  listBareModels,
  listFamiliesOfTerms,
  readAllTermsOfModels,
} from './model-facts-queries.ts'
import type { FamilyFacts, ModelFacts, Statement } from './part-dossier.ts'
import { asReadings } from './read-question.ts'
import { listSiblingParts } from './sibling-queries.ts'
import type { Readings } from './suppose-appliances.ts'
import { wordReasons } from './word-answer.ts'
import { wordAsked } from './word-asked.ts'

/** Where one part is: told by the ledger, which this capability does not know. */
export type ReadStock = (partId: PartId) => FittingPart['onHand']

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
  const ids = open.models.map(({ modelId }) => modelId)
  const termsOfModels = readAllTermsOfModels(database, ids)
  const readings = asReadings(question)
  const bare = listBareModels(database, ids, readings.serial)
  const asked: AskedList = { open, bare, termsOfModels, readings, readStock }
  const families = familiesSpokenOf(database, termsOfModels)
  const wanted = question.function === undefined ? families : findFamilies(families, question.function)
  return {
    outcome: open.outcome,
    models: open.models.length,
    families: wanted.map(family => judgeFamily(database, asked, family)).sort(byFunctionAndName),
  }
}

interface AskedList {
  readonly open: OpenModels
  readonly bare: readonly BareModel[]
  readonly termsOfModels: ReadonlyMap<number, ReadonlySet<number>>
  readonly readings: Readings
  readonly readStock: ReadStock
}

function familiesSpokenOf(database: ReadableDatabase, termsOfModels: AskedList['termsOfModels']) {
  const termsIds = new Set([...termsOfModels.values()].flatMap(terms => [...terms]))
  const familyIds = new Set(listFamiliesOfTerms(database, [...termsIds]).map(({ familyId }) => familyId))
  return [...familyIds].map(id => ({
    ...readFamilyFacts(database, id),
    partWords: describeParts(database, id),
  }))
}

function describeParts(database: ReadableDatabase, familyId: FamilyId): string[] {
  return listSiblingParts(database, familyId).map(({ partNumber }) => partNumber)
}

function judgeFamily(database: ReadableDatabase, asked: AskedList, family: FamilyFacts): FittingFamily {
  const judged = listSiblingParts(database, family.familyId).map(({ partId }) =>
    judgePart(database, asked, partId),
  )
  const parts = judged.map(({ part }) => part).sort(byVerdictAndKind)
  const allowing = judged.flatMap(({ allowing }) => allowing)
  return {
    family: asFamilyCode(family.family),
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
  database: ReadableDatabase,
  { open, bare, termsOfModels, readings, readStock }: AskedList,
  partId: PartId,
): { readonly part: FittingPart; readonly allowing: readonly Statement[] } {
  const dossier = readDossier(database, partId)
  const models: ModelFacts[] = bare.map(model => ({
    ...model,
    termsIds: termsOfModels.get(model.modelId) ?? new Set(),
  }))
  const decision = confirmModel(open, decideFit(dossier, models, readings))
  const { partNumber, kind, maker, description } = dossier.asked
  const superseding = decision.chain.at(-1)
  const part: FittingPart = {
    partNumber,
    kind,
    maker,
    description,
    verdict: decision.verdict,
    reasons: wordReasons({ dossier, models, readings }, decision),
    ask: decision.ask.map(wordAsked),
    alsoNeeds: [...decision.alsoNeeds],
    supersededBy:
      superseding === undefined || superseding === partId
        ? null
        : (dossier.parts.get(superseding)?.partNumber ?? null),
    onHand: readStock(partId),
    price: readLowestOffer(database, partId),
  }
  const allowing = decision.answers
    .filter(({ outcome }) => outcome === 'yes')
    .flatMap(({ statements }) => statements)
  return { part, allowing }
}

function asFamilyCode(family: string): FamilyCode {
  return familyCode.parse(family)
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
