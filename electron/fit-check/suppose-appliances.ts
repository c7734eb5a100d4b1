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
  type SupposedAgreement,
} from './decide-with-all-readings.ts'
import { dropUnsaid } from './drop-unsaid.ts'
import { anyDay, covers, cutDays, type DaySpan, daysInBoth, wordDays } from './made-dates.ts'
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
  asked: PartDossier,
  open: readonly ModelFacts[],
  readings: Readings,
  { dateTellsModels }: { readonly dateTellsModels: boolean } = { dateTellsModels: false },
): AlikeModels[] {
  const models = ruleOutModels(asked, open, readings)
  const dossier = dropUnsaid(asked, models)
  const ranges = dossier.statements.flatMap(({ serial }) => (serial === null ? [] : [serial]))
  const offers = offersByAttribute(dossier)
  const possible: Possible = {
    dossier,
    undivided: possibleSpans(dossier, [], readings),
    spans: possibleSpans(dossier, dateTellsModels ? models : [], readings).map(span => ({
      ...span,
      words: wordDays(span),
    })),
    serials: possibleSerials(ranges, readings.serial).map(one => ({
      ...one,
      words: wordSerialClass(one, ranges),
    })),
    ranges,
    stated: [...offers.keys()].map(attribute => readStated(attribute, dossier, readings)),
    classes: [...offers].map(([attribute, offered]) => rememberClasses(attribute, offered)),
    readings,
  }
  return groupAlike(models, possible)
}

interface Possible {
  readonly dossier: PartDossier
  /** The spans that no condition divides. */
  readonly undivided: readonly DaySpan[]
  /** The same, or where a date is to tell models apart, cut further by when each of them was made. */
  readonly spans: readonly (DaySpan & { readonly words: string })[]
  readonly serials: readonly (SerialClass & { readonly words: string })[]
  readonly ranges: readonly SerialRange[]
  /** By attribute that is offered, what each model has. */
  readonly stated: readonly ((model: ModelFacts) => string | undefined)[]
  /** In the same order, how an appliance that has this may stand to what is offered. */
  readonly classes: readonly ((stated: string | undefined) => readonly NamedClass[])[]
  readonly readings: Readings
}

/** Two models are alike when the same is said and stated of them, and they may have been made in the same spans. */
function groupAlike(models: readonly ModelFacts[], possible: Possible): AlikeModels[] {
  const spansOf = rememberSpans(possible)
  const terms = [...new Set(possible.dossier.statements.map(({ termsId }) => termsId))]
  // Of models of which the same is said and stated, only the spans differ: each span is thought through once for all.
  const ways = new Map<string, (span: number) => readonly Possibility[]>()
  const kinds = new Map<string, { models: ModelFacts[]; possibilities: readonly Possibility[] }>()
  for (const model of models) {
    const stated = possible.stated.map(statedOf => statedOf(model))
    let name = ''
    for (const termsId of terms) name += model.termsIds.has(termsId) ? '1' : '0'
    for (const value of stated) name += `\u0001${value ?? ''}`
    const spans = spansOf(model)
    const nameWithSpans = `${name}\u0001${spans.name}`
    const known = kinds.get(nameWithSpans)
    if (known !== undefined) {
      known.models.push(model)
      continue
    }
    const inSpan = ways.get(name) ?? supposeInSpan(possible, model, stated)
    ways.set(name, inSpan)
    kinds.set(nameWithSpans, { models: [model], possibilities: spans.at.flatMap(inSpan) })
  }
  return [...kinds.values()]
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
 * Which of the spans a model may have been made in: while the catalogue says it was and when its serial says, unless
 * what the plate says leaves nothing of that. The plate's own date goes first, then the date code.
 */
function rememberSpans({ spans, readings: { made } }: Possible) {
  // Thousands of models were made in a few spans of years.
  const known = new Map<string, SpansOfModel>()
  return (model: ModelFacts): SpansOfModel => {
    const days = nameDays(model)
    const found = known.get(days) ?? findSpans(spans, daysOfModel(model, made))
    known.set(days, found)
    return found
  }
}

interface SpansOfModel {
  readonly at: readonly number[]
  readonly name: string
}

function findSpans(spans: readonly DaySpan[], possible: readonly DaySpan[]): SpansOfModel {
  const narrowed: number[] = []
  for (const [at, { first, last }] of spans.entries())
    if (possible.some(days => first <= days.last && days.first <= last)) narrowed.push(at)
  const at = narrowed.length > 0 ? narrowed : [...spans.keys()]
  return { at, name: at.join() }
}

/** When a model was made, as a name. Part after part is asked about the same models. */
function nameDays(model: ModelFacts): string {
  const known = namesOfDays.get(model)
  if (known !== undefined) return known
  const name = [model.made, ...model.madeBySerial].map(({ first, last }) => `${first} ${last}`).join(' ')
  namesOfDays.set(model, name)
  return name
}

const namesOfDays = new WeakMap<ModelFacts, string>()

export function daysOfModel(
  { made: ofModel, madeBySerial }: ModelFacts,
  read: DaySpan | null,
): readonly DaySpan[] {
  if (read === null && madeBySerial.length === 0) return [ofModel]
  const narrow = (spans: readonly DaySpan[], by: readonly DaySpan[]): readonly DaySpan[] => {
    const both = spans.flatMap(span => by.flatMap(other => daysInBoth(span, other) ?? []))
    return both.length > 0 ? both : spans
  }
  return narrow(narrow([read ?? anyDay], [ofModel]), madeBySerial)
}

function possibleSerials(ranges: readonly SerialRange[], serial: string | null): SerialClass[] {
  if (serial === null) return classifySerials(ranges)
  const read = ranges.map(range => isInSerialRange(serial, range))
  if (read.every(inRange => inRange !== undefined)) return [{ example: serial, inRange: read }]
  return classifySerials(ranges).filter(({ inRange }) =>
    inRange.every((inside, at) => read[at] === undefined || read[at] === inside),
  )
}

/** Each way in which appliances like this model may be, when made in a span. */
function supposeInSpan(
  possible: Possible,
  model: ModelFacts,
  stated: readonly (string | undefined)[],
): (span: number) => readonly Possibility[] {
  const { undivided, spans, serials } = possible
  const attributes = supposeAttributes(possible, stated)
  const ways = serials.flatMap(serial => attributes.map(supposed => ({ serial, supposed })))
  const answers = new Map<DaySpan, readonly KnownAnswer[]>()
  const answersOf = (made: DaySpan): readonly KnownAnswer[] => {
    const known = answers.get(made)
    if (known !== undefined) return known
    const fresh = ways.map(way => answerFor(possible, { termsIds: model.termsIds, made, ...way }))
    answers.set(made, fresh)
    return fresh
  }
  const suppose = (at: number): readonly Possibility[] => {
    const made = spans[at]
    const whole = made && undivided.find(span => covers(span, made))
    if (made === undefined || whole === undefined)
      throw new Error(`a span lies within one that is undivided, but not ${at}`)
    return answersOf(whole).flatMap((answer, way) => {
      const { serial, supposed } = ways[way] ?? {}
      if (serial === undefined || supposed === undefined) return []
      const shows = new Map<string, string>()
      for (const [attribute, one] of supposed) shows.set(attribute, one.words)
      shows.set('made', made.words).set('serial', serial.words)
      return [{ shows, answer }]
    })
  }
  const supposed = new Map<number, readonly Possibility[]>()
  return at => {
    const known = supposed.get(at)
    if (known !== undefined) return known
    const fresh = suppose(at)
    supposed.set(at, fresh)
    return fresh
  }
}

interface SupposedWay {
  readonly termsIds: ReadonlySet<number>
  readonly made: DaySpan
  readonly serial: SerialClass
  readonly supposed: ReadonlyMap<string, AttributeClass>
}

function answerFor(
  { dossier, ranges }: Possible,
  { termsIds, made, serial: { inRange }, supposed }: SupposedWay,
): KnownAnswer {
  return decideWithAllReadings(dossier, {
    termsIds,
    made,
    serialInRange: ({ serial }) => serial !== null && inRange[ranges.indexOf(serial)] === true,
    agreementOf: (part, rule) => agreementOf(supposed.get(rule.attribute), part, rule, dossier),
  })
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
  { classes }: Possible,
  stated: readonly (string | undefined)[],
): ReadonlyMap<string, AttributeClass>[] {
  let combinations: NamedClass[][] = [[]]
  for (const [at, classesOf] of classes.entries()) {
    const possible = classesOf(stated[at])
    combinations = combinations.flatMap(combination => possible.map(one => [...combination, one]))
  }
  return combinations.map(combination => new Map(combination))
}

type NamedClass = readonly [attribute: string, AttributeClass]

/** Many models have the same. */
function rememberClasses(attribute: string, offers: readonly AttributeOffer[]) {
  const known = new Map<string | undefined, readonly NamedClass[]>()
  return (stated: string | undefined): readonly NamedClass[] => {
    const found = known.get(stated)
    if (found !== undefined) return found
    const fresh = classifyAttribute(offers, stated).map(one => [attribute, one] as const)
    known.set(stated, fresh)
    return fresh
  }
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

/** What an appliance has: as its plate reads or as was measured, or else as the catalogue states for its model. */
export function readStated(
  attribute: string,
  { families }: PartDossier,
  { stated }: Readings,
): (model: ModelFacts) => string | undefined {
  const plate = plateAttributes.get(attribute)
  const read = stated.get(plate ?? attribute)
  if (read !== undefined) return () => read
  const keys = [...families.keys()].map(familyId => attributeKey(familyId, attribute))
  return model => {
    for (const key of keys) {
      const ofFamily = model.stated.get(key)
      if (ofFamily !== undefined) return ofFamily
    }
    return plate === undefined ? undefined : (model[plate] ?? undefined)
  }
}

function wordSerialClass({ inRange }: SerialClass, ranges: readonly SerialRange[]): string {
  const inside = ranges.filter((_, at) => inRange[at])
  return inside.length === 0 ? anyOther : [...new Set(inside.map(wordSerialRange))].join(' and ')
}

export function wordSerialRange({ from, to }: SerialRange): string {
  if (from === null) return `to ${to}`
  return to === null ? `${from} on` : `${from} to ${to}`
}
