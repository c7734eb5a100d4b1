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

/** One way the appliance may be, with the answer it would get. */
export interface Supposition {
  readonly model: ModelFacts
  /** By reading (`made`, `serial` or an attribute's name), what it would show. */
  readonly shows: ReadonlyMap<string, string>
  readonly answer: KnownAnswer
}

/**
 * Every way the appliance may be, as far as any statement, replacement or attribute can tell: each open model, made in
 * each span that no condition divides, with a serial of each class, with each open attribute agreeing or not. A
 * verdict that holds in all of them is proved; one that differs waits for a reading.
 */
export function supposeAppliances(
  dossier: PartDossier,
  open: readonly ModelFacts[],
  readings: Readings,
): Supposition[] {
  const models = ruleOutModels(dossier, open, readings)
  const spans = possibleSpans(dossier, models, readings)
  const ranges = dossier.statements.flatMap(({ serial }) => (serial === null ? [] : [serial]))
  const serials = possibleSerials(ranges, readings.serial)
  const answered = new Map<string, readonly Omit<Supposition, 'model'>[]>()
  return models.flatMap(model => {
    const spansOfModel = narrowToModel(spans, model, readings)
    const alike = models.length === 1 ? '' : nameOfAlike(dossier, model, spansOfModel)
    const known =
      answered.get(alike) ?? supposeModel(dossier, model, { spans: spansOfModel, serials, ranges, readings })
    answered.set(alike, known)
    return known.map(supposed => ({ ...supposed, model }))
  })
}

/**
 * Cut by every condition, and, while few models are open, by when each was made: then a date may also tell the models
 * apart.
 */
function possibleSpans(
  { statements, replacements }: PartDossier,
  models: readonly ModelFacts[],
  { made }: Readings,
): DaySpan[] {
  const conditions = [...statements.map(said => said.made), ...replacements.map(step => step.made)]
  const ofModels =
    models.length <= fewModels ? models.flatMap(model => [model.made, ...model.madeBySerial]) : []
  return cutDays(made ?? anyDay, [...conditions, ...ofModels])
}

const fewModels = 50

/**
 * A model was made while the catalogue says it was and when its serial says, unless what the plate says leaves nothing
 * of that. The plate's own date goes first, then the date code.
 */
function narrowToModel(spans: readonly DaySpan[], model: ModelFacts, { made }: Readings): readonly DaySpan[] {
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

/** Models of which the same things are said need be judged only once: a set of thousands has few kinds. */
function nameOfAlike({ statements }: PartDossier, model: ModelFacts, spans: readonly DaySpan[]): string {
  const said = statements.filter(({ termsId }) => model.termsIds.has(termsId)).map(({ termsId }) => termsId)
  const stated = [...model.stated].sort().join('\u0001')
  return [said, spans.map(span => span.first), model.volts, model.hertz, model.watts, stated].join('\u0002')
}

function possibleSerials(ranges: readonly SerialRange[], serial: string | null): SerialClass[] {
  if (serial === null) return classifySerials(ranges)
  const read = ranges.map(range => isInSerialRange(serial, range))
  if (read.every(inRange => inRange !== undefined)) return [{ example: serial, inRange: read }]
  return classifySerials(ranges).filter(({ inRange }) =>
    inRange.every((inside, at) => read[at] === undefined || read[at] === inside),
  )
}

interface Possibilities {
  readonly spans: readonly DaySpan[]
  readonly serials: readonly SerialClass[]
  readonly ranges: readonly SerialRange[]
  readonly readings: Readings
}

function supposeModel(
  dossier: PartDossier,
  model: ModelFacts,
  { spans, serials, ranges, readings }: Possibilities,
): Omit<Supposition, 'model'>[] {
  const attributes = supposeAttributes(dossier, model, readings)
  return spans.flatMap(made =>
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
        shows.set('made', wordDays(made)).set('serial', wordSerialClass(serialClass, ranges))
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
  readings: Readings,
): ReadonlyMap<string, AttributeClass>[] {
  let combinations: ReadonlyMap<string, AttributeClass>[] = [new Map()]
  for (const [attribute, offers] of offersByAttribute(dossier)) {
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
