import { type AttributeRule, compareAttribute } from './compare-attributes.ts'
import {
  decideWithAllReadings,
  type KnownAnswer,
  type KnownAppliance,
  type SupposedAgreement,
} from './decide-with-all-readings.ts'
import { followToCurrent } from './follow-supersessions.ts'
import { anyDay, cutDays, type DaySpan, daysInBoth, wordDays } from './made-dates.ts'
import { attributeKey, type ModelFacts, type PartDossier, type PartFacts } from './part-dossier.ts'
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
  models: readonly ModelFacts[],
  readings: Readings,
): Supposition[] {
  const spans = possibleSpans(dossier, readings)
  const ranges = dossier.statements.flatMap(({ serial }) => (serial === null ? [] : [serial]))
  const serials = possibleSerials(ranges, readings.serial)
  const answered = new Map<string, readonly Omit<Supposition, 'model'>[]>()
  return models.flatMap(model => {
    const spansOfModel = narrowToModel(spans, model, readings)
    const alike = nameOfAlike(dossier, model, spansOfModel)
    const known =
      answered.get(alike) ?? supposeModel(dossier, model, { spans: spansOfModel, serials, ranges, readings })
    answered.set(alike, known)
    return known.map(supposed => ({ ...supposed, model }))
  })
}

function possibleSpans({ statements, replacements }: PartDossier, { made }: Readings): DaySpan[] {
  return cutDays(made ?? anyDay, [
    ...statements.map(said => said.made),
    ...replacements.map(step => step.made),
  ])
}

/** A model was made while the catalogue says it was, unless the plate itself says otherwise. */
function narrowToModel(spans: readonly DaySpan[], model: ModelFacts, { made }: Readings): readonly DaySpan[] {
  const inBoth = daysInBoth(made ?? anyDay, model.made)
  return inBoth === undefined ? spans : spans.filter(span => daysInBoth(span, inBoth) !== undefined)
}

/** Models of which the same things are said need be judged only once: a set of thousands has few kinds. */
function nameOfAlike({ statements }: PartDossier, model: ModelFacts, spans: readonly DaySpan[]): string {
  const said = statements.filter(({ termsId }) => model.termsIds.has(termsId)).map(({ termsId }) => termsId)
  const stated = [...model.stated].sort().join('\u0001')
  return [said, spans[0]?.first, spans.at(-1)?.last, model.volts, model.hertz, model.watts, stated].join(
    '\u0002',
  )
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
  return spans.flatMap(made =>
    serials.flatMap(serialClass =>
      supposeAttributes(dossier, model, made, readings).map(agreements => {
        const appliance: KnownAppliance = {
          termsIds: model.termsIds,
          made,
          serialInRange: ({ serial }) =>
            serial !== null && serialClass.inRange[ranges.indexOf(serial)] === true,
          agreementOf: (_part, { attribute }) => agreements.get(attribute)?.agreement ?? 'not-stated',
        }
        const shows = new Map([...agreements].map(([attribute, { shows }]) => [attribute, shows]))
        shows.set('made', wordDays(made))
        shows.set('serial', wordSerialClass(serialClass, ranges))
        return { shows, answer: decideWithAllReadings(dossier, appliance) }
      }),
    ),
  )
}

interface SupposedAttribute {
  readonly agreement: SupposedAgreement
  readonly shows: string
}

/** Each combination of what the open attributes of the part supplied in this span may turn out to be. */
function supposeAttributes(
  dossier: PartDossier,
  model: ModelFacts,
  made: DaySpan,
  readings: Readings,
): ReadonlyMap<string, SupposedAttribute>[] {
  const { partId } = followToCurrent(dossier.asked.partId, dossier.replacements, made)
  const part = dossier.parts.get(partId)
  const family = part && dossier.families.get(part.familyId)
  if (part === undefined || family === undefined) return [new Map()]
  let combinations: ReadonlyMap<string, SupposedAttribute>[] = [new Map()]
  for (const rule of family.attributes) {
    const choices = supposeAttribute(rule, part, model, readings, family.differing.has(rule.attribute))
    combinations = combinations.flatMap(combination =>
      choices.map(choice => new Map([...combination, [rule.attribute, choice] as const])),
    )
  }
  return combinations
}

function supposeAttribute(
  rule: AttributeRule,
  part: PartFacts,
  model: ModelFacts,
  readings: Readings,
  familyDiffers: boolean,
): SupposedAttribute[] {
  const offered = part.attributes.get(rule.attribute)
  if (offered === undefined) return [{ agreement: 'not-stated', shows: anyValue }]
  const agreement = compareAttribute(rule, {
    part: offered,
    appliance: statedFor(rule, part, model, readings),
  })
  const value = wordValue(rule, offered)
  if (agreement !== 'unknown') return [{ agreement, shows: agreement === 'agrees' ? value : anyOther }]
  // Both are supposed even where the answer rests, so that what happens to be stated is not taken for a reading.
  return [
    { agreement: 'agrees', shows: value },
    { agreement: agreementIfOther(rule, familyDiffers), shows: anyOther },
  ]
}

/** A plate's reading settles for any part; another attribute only where parts of the family differ in it. */
function agreementIfOther({ attribute }: AttributeRule, familyDiffers: boolean): SupposedAgreement {
  if (plateAttributes.has(attribute)) return 'disagrees'
  return familyDiffers ? 'would-disagree' : 'not-stated'
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

/** What the appliance has: as its plate reads, or else as the catalogue states for this family or this model. */
export function statedFor(
  { attribute }: AttributeRule,
  part: PartFacts,
  model: ModelFacts,
  { stated }: Readings,
): string | undefined {
  const ofFamily = model.stated.get(attributeKey(part.familyId, attribute))
  const plate = plateAttributes.get(attribute)
  if (plate === undefined) return stated.get(attribute) ?? ofFamily
  return stated.get(plate) ?? ofFamily ?? model[plate] ?? undefined
}

export const anyValue = 'any value'
export const anyOther = 'any other'

/** What the reading must show for this part: `230 V`, `at most 16 A`, `12 µF within 5 %`. */
function wordValue({ rule, unit, tolerance }: AttributeRule, offered: string): string {
  const value = unit === '' || unit === 'text' ? offered : `${offered} ${unit}`
  switch (rule) {
    case 'equal':
      return value
    case 'within':
      return `${value} within ${Math.round((tolerance ?? 0) * 1000) / 10} %`
    case 'at-least':
      return `at most ${value}`
    case 'at-most':
      return `at least ${value}`
    case 'covers':
      return `within ${value}`
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
