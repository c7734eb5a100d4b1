import type { PartId } from '../../shared-schemas/identifiers.ts'
import type { OfferedMove, OrderLine } from '../../shared-schemas/order-check.ts'
import { partialDate } from '../../shared-schemas/plate-reading.ts'
import { normaliseNumber } from '../catalogue/normalise-number.ts'
import { findPartsByNumbers, listNearestPartNumbers } from '../catalogue/part-queries.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import { currentShelf } from '../fit-check/dossier-queries.ts'
import { listFitRecords } from '../fit-check/fit-record-queries.ts'
import { twinsOf } from '../fit-check/follow-supersessions.ts'
import { type JudgedPart, judgeMany, type PartQuestion } from '../fit-check/judge-many.ts'
import { anyDay, covers } from '../fit-check/made-dates.ts'
import { partsOfDecision } from '../fit-check/note-records.ts'
import type { PartDossier } from '../fit-check/part-dossier.ts'
import { asReadings } from '../fit-check/read-question.ts'
import { gatherTogether } from '../fit-check/replace-together.ts'
import { currentModelIndex } from '../model-lookup/current-model-index.ts'
import { decideOpenModels } from '../model-lookup/find-open-models.ts'
import type { ModelIndex } from '../model-lookup/index-models.ts'
import { type CurrentNumber, findCurrentNumber, isProvedOnlyNewer, isYes } from './find-current-number.ts'
import type { Appliance, LineFacts, OpenOrderLine, PaidPrice } from './line-facts.ts'
import { readOffers } from './order-check-queries.ts'
import { readQuantity } from './read-quantity.ts'

/** What other capabilities know of parts; this one does not know them. */
export interface ToldOfParts {
  /** Pieces that can be taken from where they are: nothing from quarantine. */
  readonly readUsableStock: (
    partIds: readonly PartId[],
  ) => ReadonlyMap<PartId, readonly Omit<OfferedMove, 'partNumber'>[]>
  readonly readOpenOrders: (partIds: readonly PartId[]) => ReadonlyMap<PartId, readonly OpenOrderLine[]>
  readonly readLastPaid: (partIds: readonly PartId[]) => ReadonlyMap<PartId, PaidPrice>
}

/** All that the rules ask of each line, read once for the whole order. */
export function gatherLineFacts(
  database: ReadableDatabase,
  told: ToldOfParts,
  lines: readonly OrderLine[],
): LineFacts[] {
  const begun = beginLines(database, lines)
  const judged = judgeLines(database, begun)
  const currents = begun.map(({ dossier }, at) => dossier && findCurrentNumber(dossier, judged[at]))
  const standing = begun.map(({ dossier }, at) => {
    const current = currents[at]
    return dossier && current ? standsFor(dossier, current, judged[at]) : []
  })
  const together = judged.map(line =>
    line !== undefined && isYes(line.decision.verdict) ? gatherTogether(line.decision.answers) : [],
  )
  const companionIds = together.flat().map(({ partId }) => partId)
  const own = begun.flatMap(({ part }) => (part === undefined ? [] : [part.partId]))
  const partIds = [...new Set([...own, ...standing.flat()])]
  const stock = told.readUsableStock([...new Set([...partIds, ...companionIds])])
  const openOrders = told.readOpenOrders(partIds)
  const lastPaid = told.readLastPaid(partIds)
  const offers = readOffers(database, partIds)
  const records = listFitRecords(database, [
    ...new Set(
      judged.flatMap(line => (line === undefined ? [] : [...partsOfDecision(line.partId, line.decision)])),
    ),
  ])
  return begun.map((line, at) => {
    const ids = standing[at] ?? []
    const partId = line.part?.partId
    return {
      ...line,
      quantity: readQuantity(line.given.quantity),
      judged: judged[at],
      current: currents[at],
      companions: (together[at] ?? []).map(companion => ({
        ...companion,
        moves: placesOf(stock.get(companion.partId), companion.partNumber),
      })),
      records,
      offers: (partId !== undefined && offers.get(partId)) || [],
      moves: ids.flatMap(id => placesOf(stock.get(id), line.dossier?.parts.get(id)?.partNumber ?? '')),
      openOrders: ids.flatMap(id => openOrders.get(id) ?? []),
      lastPaid: partId === undefined ? undefined : lastPaid.get(partId),
    }
  })
}

type BegunLine = Pick<LineFacts, 'given' | 'part' | 'nearest' | 'dossier' | 'appliance' | 'applianceName'>

/** Part and appliance of each line; parts are found at once, and a plate that comes again is looked up once. */
function beginLines(database: ReadableDatabase, lines: readonly OrderLine[]): BegunLine[] {
  const index = currentModelIndex(database)
  const shelf = currentShelf(database)
  const parts = findPartsByNumbers(
    database,
    lines.map(({ partNumber }) => partNumber),
  )
  const appliances = new Map<string, Appliance>()
  return lines.map(given => {
    const part = parts.get(given.partNumber)
    const written = [given.brand, given.modelNumber, given.made, given.serial].join('\u0000')
    const appliance = remember(appliances, written, () => readAppliance(index, given))
    return {
      given,
      part,
      nearest: part === undefined ? listNearestPartNumbers(database, given.partNumber) : [],
      dossier: part && shelf.dossier(part.partId),
      appliance,
      applianceName: nameAppliance(appliance, given),
    }
  })
}

function remember<Value>(known: Map<string, Value>, key: string, find: () => Value): Value {
  const before = known.get(key)
  if (before !== undefined) return before
  const found = find()
  known.set(key, found)
  return found
}

export function readAppliance(index: ModelIndex, given: OrderLine): Appliance {
  const { brand, modelNumber, made, serial } = given
  if (!modelNumber) return brand || made || serial ? { kind: 'incomplete' } : { kind: 'none' }
  if (made && !partialDate.safeParse(made).success)
    return {
      kind: 'unreadable',
      why: `The date of making “${made}” cannot be read. Write it as 2014, 2014-06 or 2014-06-17.`,
    }
  const open = decideOpenModels(index, brand ? { text: modelNumber, brand } : { text: modelNumber })
  return open.ok ? { kind: 'read', open: open.value } : { kind: 'refused', problem: open.problem }
}

/** Lines that name one model in two ways are for the same appliance, unless they date or number it differently. */
function nameAppliance(appliance: Appliance, { brand, modelNumber, made, serial }: OrderLine): string {
  if (appliance.kind === 'none') return ''
  const [only, ...others] = appliance.kind === 'read' ? appliance.open.models : []
  const model =
    only !== undefined && others.length === 0
      ? `model ${only.modelId}`
      : [normaliseNumber(brand ?? ''), normaliseNumber(modelNumber ?? '')].join('\u0000')
  return [model, made ?? '', normaliseNumber(serial ?? '')].join('\u0000')
}

/** The verdicts, each at its line's place; a line without a part or an open model has none. */
function judgeLines(database: ReadableDatabase, lines: readonly BegunLine[]): (JudgedPart | undefined)[] {
  const asked = lines.map(({ given, part, appliance }): PartQuestion | undefined => {
    if (part === undefined || appliance.kind !== 'read' || appliance.open.models.length === 0)
      return undefined
    const { made, serial } = given
    return {
      partId: part.partId,
      open: appliance.open,
      readings: asReadings({ ...(made ? { made } : {}), ...(serial ? { serial } : {}) }),
    }
  })
  const judged = judgeMany(
    database,
    asked.filter(question => question !== undefined),
  )
  let next = 0
  return asked.map(question => (question === undefined ? undefined : judged[next++]))
}

/**
 * Whatever may be used in the part's place: the part itself, those that always stand for it, and what is supplied for it
 * today. Where only the newer number is proved to fit, the older ones are not among them.
 */
function standsFor(
  { asked, replacements }: PartDossier,
  { partId: current }: CurrentNumber,
  judged: JudgedPart | undefined,
): PartId[] {
  if (replacements.length === 0) return [asked.partId]
  const always = replacements.filter(({ made }) => covers(made, anyDay))
  const older = judged !== undefined && isProvedOnlyNewer(judged) ? [] : twinsOf(asked.partId, always)
  return [...new Set([...older, ...twinsOf(current, always)])]
}

function placesOf(
  places: readonly Omit<OfferedMove, 'partNumber'>[] = [],
  partNumber: string,
): OfferedMove[] {
  return places.filter(({ quantity }) => quantity > 0).map(place => ({ partNumber, ...place }))
}
