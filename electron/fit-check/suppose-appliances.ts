import {
  type AttributeClass,
  type AttributeOffer,
  anyOther,
  classifyAttribute,
} from './classify-attribute.ts'
import type { AttributeRule } from './compare-attributes.ts'
import {
  decideWithAllReadings,
  type KnownAnswer,
  type KnownAppliance,
  type SupposedAgreement,
} from './decide-with-all-readings.ts'
import { anyDay, cutDays, type DaySpan, daysInBoth, wordDays } from './made-dates.ts'
import { attributeKey, type ModelFacts, type PartDossier, type PartFacts } from './part-dossier.ts'
import { ruleOutModels } from './rule-out-models.ts'
import { classifySerials, isInSerialRange, type SerialClass, type SerialRange } from './serial-ranges.ts'

/** What is known of the appliance besides its model. Null is not read. */
export interface Readings {
  readonly made: DaySpan | null
  readonly serial: string | null
  /** `volts`, `hertz` and `watts` as the plate prints them. */
  readonly stated: ReadonlyMap<string, string>
}

/** One way an appliance may be, with the answer it would get. */
export interface Possibility {
  /** By reading (`made`, `serial` or an attribute's name), what it would show. */
  readonly shows: ReadonlyMap<string, string>
  readonly answer: KnownAnswer
}

/** Models of which the same is said, so that they may be in the same ways: a set of thousands has few kinds. */
export interface AlikeModels {
  readonly models: readonly ModelFacts[]
  readonly possibilities: readonly Possibility[]
}

/**
 * Every way the appliance may be, as far as any statement, replacement or attribute can tell: each open model, made in
 * each span that no condition divides, with a serial of each class, with each open attribute agreeing or not. A
 * verdict that holds in all of them is proved; one that differs waits for a reading. Where `dateTellsModels`, spans are
 * also cut by when each model was made, so that a date may be asked for to tell the models apart; no answer differs.
 */
export function supposeAppliances(
  dossier: PartDossier,
  open: readonly ModelFacts[],
  readings: Readings,
  { dateTellsModels }: { readonly dateTellsModels: boolean } = { dateTellsModels: false },
): AlikeModels[] {
  const models = ruleOutModels(dossier, open, readings)
  const ranges = dossier.statements.flatMap(({ serial }) => (serial === null ? [] : [serial]))
  const possibilities: Possibilities = {
    spans: possibleSpans(dossier, dateTellsModels ? models : [], readings).map(span => ({
      ...span,
      words: wordDays(span),
    })),
    serials: possibleSerials(ranges, readings.serial).map(one => ({
      ...one,
      words: wordSerialClass(one, ranges),
    })),
    ranges,
    offers: offersByAttribute(dossier),
    readings,
  }
  const kinds = Map.groupBy(models, nameKinds(dossier, possibilities))
  return [...kinds.values()].map(alike => ({
    models: alike,
    possibilities: alike[0] === undefined ? [] : supposeModel(dossier, alike[0], possibilities),
  }))
}

interface Possibilities {
  readonly spans: readonly (DaySpan & { readonly words: string })[]
  readonly serials: readonly (SerialClass & { readonly words: string })[]
  readonly ranges: readonly SerialRange[]
  readonly offers: ReadonlyMap<string, readonly AttributeOffer[]>
  readonly readings: Readings
}

function possibleSpans(
  { statements, replacements }: PartDossier,
  toldApart: readonly ModelFacts[],
  { made }: Readings,
): DaySpan[] {
  const conditions = [...statements.map(said => said.made), ...replacements.map(step => step.made)]
  const ofModels = toldApart.flatMap(model => [model.made, ...model.madeBySerial])
  return cutDays(made ?? anyDay, [...conditions, ...ofModels])
}

/**
 * A model was made while the catalogue says it was and when its serial says, unless what the plate says leaves nothing
 * of that. The plate's own date goes first, then the date code.
 */
function narrowToModel<Span extends DaySpan>(
  spans: readonly Span[],
  model: ModelFacts,
  { made }: Readings,
): readonly Span[] {
  const possible = daysOfModel(model, made)
  const narrowed = spans.filter(span => possible.some(days => daysInBoth(span, days) !== undefined))
  return narrowed.length > 0 ? narrowed : spans
}

export function daysOfModel(
  { made: ofModel, madeBySerial }: ModelFacts,
  read: DaySpan | null,
): readonly DaySpan[] {
  const narrow = (spans: readonly DaySpan[], by: readonly DaySpan[]): readonly DaySpan[] => {
    const both = spans.flatMap(span => by.flatMap(other => daysInBoth(span, other) ?? []))
    return both.length > 0 ? both : spans
  }
  return narrow(narrow([read ?? anyDay], [ofModel]), madeBySerial)
}

/** Two models of one name have the same possibilities: the same is said and stated of them, in the same spans. */
function nameKinds(
  dossier: PartDossier,
  { spans, offers, readings }: Possibilities,
): (model: ModelFacts) => string {
  const terms = [...new Set(dossier.statements.map(({ termsId }) => termsId))]
  const attributes = [...offers.keys()]
  // Thousands of models were made in a few spans of years.
  const narrowed = new Map<string, string>()
  const nameDays = (model: ModelFacts): string => {
    const days = [model.made, ...model.madeBySerial].reduce(
      (all, { first, last }) => `${all} ${first} ${last}`,
      '',
    )
    const known = narrowed.get(days)
    if (known !== undefined) return known
    const name = narrowToModel(spans, model, readings)
      .map(({ first }) => first)
      .join()
    narrowed.set(days, name)
    return name
  }
  return model => {
    let said = ''
    for (const termsId of terms) said += model.termsIds.has(termsId) ? '1' : '0'
    const stated = attributes.map(attribute => statedFor(attribute, dossier, model, readings) ?? '')
    return `${said}\u0001${nameDays(model)}\u0001${stated.join('\u0001')}`
  }
}

function possibleSerials(ranges: readonly SerialRange[], serial: string | null): SerialClass[] {
  if (serial === null) return classifySerials(ranges)
  const read = ranges.map(range => isInSerialRange(serial, range))
  if (read.every(inRange => inRange !== undefined)) return [{ example: serial, inRange: read }]
  return classifySerials(ranges).filter(({ inRange }) =>
    inRange.every((inside, at) => read[at] === undefined || read[at] === inside),
  )
}

function supposeModel(dossier: PartDossier, model: ModelFacts, possible: Possibilities): Possibility[] {
  const { serials, ranges, offers, readings } = possible
  const attributes = supposeAttributes(dossier, model, offers, readings)
  return narrowToModel(possible.spans, model, readings).flatMap(made =>
    serials.flatMap(serialClass =>
      attributes.map(supposed => {
        const appliance: KnownAppliance = {
          termsIds: model.termsIds,
          made,
          serialInRange: ({ serial }) =>
            serial !== null && serialClass.inRange[ranges.indexOf(serial)] === true,
          agreementOf: (part, rule) => agreementOf(supposed.get(rule.attribute), part, rule, dossier),
        }
        const shows = new Map([...supposed].map(([attribute, { words }]) => [attribute, words]))
        shows.set('made', made.words).set('serial', serialClass.words)
        return { shows, answer: decideWithAllReadings(dossier, appliance) }
      }),
    ),
  )
}

function agreementOf(
  supposed: AttributeClass | undefined,
  part: PartFacts,
  rule: AttributeRule,
  { families }: PartDossier,
): SupposedAgreement {
  const offered = part.attributes.get(rule.attribute)
  if (supposed === undefined || offered === undefined) return 'not-stated'
  if (supposed.suits.has(offered)) return 'agrees'
  if (supposed.isStated || plateAttributes.has(rule.attribute)) return 'disagrees'
  return families.get(part.familyId)?.differing.has(rule.attribute) ? 'would-disagree' : 'not-stated'
}

/** Each combination of what the appliance may have in the attributes that any part of the dossier states. */
function supposeAttributes(
  dossier: PartDossier,
  model: ModelFacts,
  offersByAttribute: Possibilities['offers'],
  readings: Readings,
): ReadonlyMap<string, AttributeClass>[] {
  let combinations: ReadonlyMap<string, AttributeClass>[] = [new Map()]
  for (const [attribute, offers] of offersByAttribute) {
    const classes = classifyAttribute(offers, statedFor(attribute, dossier, model, readings))
    combinations = combinations.flatMap(combination =>
      classes.map(one => new Map([...combination, [attribute, one] as const])),
    )
  }
  return combinations
}

function offersByAttribute({ parts, families }: PartDossier): ReadonlyMap<string, AttributeOffer[]> {
  const byAttribute = new Map<string, AttributeOffer[]>()
  for (const part of parts.values()) {
    for (const rule of families.get(part.familyId)?.attributes ?? []) {
      const offered = part.attributes.get(rule.attribute)
      if (offered === undefined) continue
      const offers = byAttribute.get(rule.attribute) ?? []
      byAttribute.set(rule.attribute, [...offers, { rule, offered }])
    }
  }
  return byAttribute
}

/** The attributes that a rating plate prints, by the names that catalogues give them. */
export const plateAttributes: ReadonlyMap<string, 'volts' | 'hertz' | 'watts'> = new Map([
  ['volts', 'volts'],
  ['voltage', 'volts'],
  ['supply voltage', 'volts'],
  ['rated voltage', 'volts'],
  ['hertz', 'hertz'],
  ['frequency', 'hertz'],
  ['watts', 'watts'],
])

/** What the appliance has: as its plate reads or as was measured, or else as the catalogue states for this model. */
export function statedFor(
  attribute: string,
  { families }: PartDossier,
  model: ModelFacts,
  { stated }: Readings,
): string | undefined {
  const plate = plateAttributes.get(attribute)
  const read = stated.get(plate ?? attribute)
  if (read !== undefined) return read
  for (const familyId of families.keys()) {
    const ofFamily = model.stated.get(attributeKey(familyId, attribute))
    if (ofFamily !== undefined) return ofFamily
  }
  return plate === undefined ? undefined : (model[plate] ?? undefined)
}

function wordSerialClass({ inRange }: SerialClass, ranges: readonly SerialRange[]): string {
  const inside = ranges.filter((_, at) => inRange[at])
  return inside.length === 0 ? anyOther : [...new Set(inside.map(wordSerialRange))].join(' and ')
}

export function wordSerialRange({ from, to }: SerialRange): string {
  if (from === null) return `to ${to}`
  return to === null ? `${from} on` : `${from} to ${to}`
}
