import type { CheckedLine, CheckedOrder, OrderFlag, Severity } from '../../shared-schemas/order-check.ts'
import { applyOverrides, type RecordedOverride } from './apply-overrides.ts'
import { flagCautions } from './flag-cautions.ts'
import { flagFit, verdictOfLine } from './flag-fit.ts'
import { flagKits, groupByAppliance } from './flag-kits.ts'
import { flagLineAsWritten } from './flag-line-as-written.ts'
import { countNeeds, flagNeededParts, type NeedsOfOrder } from './flag-needed-parts.ts'
import { flagOffers } from './flag-offers.ts'
import { flagPrice } from './flag-price.ts'
import { flagRepeats, groupRepeats, type RepeatsOfOrder } from './flag-repeats.ts'
import { countCompanions, flagReplacedTogether } from './flag-replaced-together.ts'
import { flagStock } from './flag-stock.ts'
import { flagSuperseded } from './flag-superseded.ts'
import { type LineFacts, piecesOf } from './line-facts.ts'

export interface OrderInQuestion {
  readonly lines: readonly LineFacts[]
  readonly supplier: string | undefined
  readonly overrides: ReadonlyMap<string, RecordedOverride>
}

/** Every line with what the rules find on it, the gravest first. */
export function checkLines(order: OrderInQuestion): CheckedOrder {
  const needs = countNeeds(order.lines)
  const repeats = groupRepeats(order.lines)
  const companions = countCompanions(order.lines)
  const byAppliance = groupByAppliance(order.lines)
  const whole = { needs, repeats, companions, byAppliance }
  const lines = order.lines.map(facts => checkLine(facts, order, whole))
  const count = (severity: Severity) =>
    lines.reduce((sum, { flags }) => sum + flags.filter(found => found.severity === severity).length, 0)
  return { lines, stops: count('stop'), cautions: count('caution'), notes: count('note') }
}

/** What the rules ask of the order as a whole, counted once. */
interface WholeOrder {
  readonly needs: NeedsOfOrder
  readonly repeats: RepeatsOfOrder
  readonly companions: ReadonlyMap<string, number>
  readonly byAppliance: ReadonlyMap<string, readonly LineFacts[]>
}

function checkLine(
  facts: LineFacts,
  { supplier, overrides }: OrderInQuestion,
  { needs, repeats, companions: wanted, byAppliance }: WholeOrder,
): CheckedLine {
  const same = (repeats.byPart.get(facts.current?.partId) ?? []).filter(
    ({ applianceName }) => applianceName === facts.applianceName,
  )
  const found = [
    ...flagLineAsWritten(facts),
    ...flagFit(facts),
    ...flagSuperseded(facts),
    ...flagNeededParts(facts, needs),
    ...flagReplacedTogether(facts, { ordered: needs.ordered, wanted, same }),
    ...flagKits(facts, byAppliance),
    ...flagOffers(facts, supplier),
    ...flagPrice(facts, supplier),
    ...flagRepeats(facts, repeats),
    ...flagStock(facts),
    ...flagCautions(facts),
  ]
  return {
    line: facts.given.line,
    partNumber: facts.given.partNumber,
    quantity: piecesOf(facts) ?? null,
    verdict: verdictOfLine(facts),
    flags: gravestFirst(applyOverrides(found, facts, supplier, overrides)),
    description: facts.part?.description ?? null,
    orderNumber: orderNumberOf(facts),
    model: modelOf(facts),
    moves: [...facts.moves],
  }
}

const order: readonly Severity[] = ['stop', 'caution', 'note']

function gravestFirst(flags: readonly OrderFlag[]): OrderFlag[] {
  return [...flags].sort((one, other) => order.indexOf(one.severity) - order.indexOf(other.severity))
}

function orderNumberOf({ dossier, current }: LineFacts): string | null {
  return (current && dossier?.parts.get(current.partId)?.partNumber) ?? null
}

function modelOf({ appliance }: LineFacts): CheckedLine['model'] {
  if (appliance.kind !== 'read' || appliance.open.agreement === 'differs') return null
  const [only, ...others] = appliance.open.models
  if (only === undefined || others.length > 0) return null
  return { brand: only.brand, modelNumber: only.modelNumber }
}
