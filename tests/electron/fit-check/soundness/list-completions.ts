import {
  attributeKey,
  type ModelFacts,
  type PartDossier,
} from '../../../../electron/fit-check/part-dossier.ts'
import { familyIdOf } from '../../../builders/fit-dossier.ts'
import { type Question, threads, volts } from './generate-questions.ts'
import { type ConcreteAppliance, judgeNaively, type NaiveAnswer } from './naive-fit.ts'

export interface Completion extends ConcreteAppliance {
  readonly answer: NaiveAnswer
}

/** Every appliance, with every reading known, that the question may be about, judged naively. */
export function listCompletions(question: Question): Completion[] {
  const { dossier } = question
  const models = modelsNotContradicted(question)
  const serials = serialsOf(question)
  return models.flatMap(model =>
    daysOfModel(question, model).flatMap(day =>
      serials.flatMap(serial =>
        attributesOf(question, model).map(has => {
          const appliance = { model, day, serial, has }
          return { ...appliance, answer: judgeNaively(dossier, appliance) }
        }),
      ),
    ),
  )
}

/** Every serial at which a range begins or ends, the one before and the one after. */
function serialsOf({ dossier, plate }: Question): number[] {
  if (plate.serial !== undefined) return [Number(plate.serial)]
  const ends = dossier.statements.flatMap(({ serial }) =>
    serial === null ? [] : [Number(serial.from), Number(serial.to)],
  )
  return [...new Set([0, ...ends.flatMap(end => [end - 1, end, end + 1])])]
}

/** A reading that contradicts a model rules it out, unless that would leave none; date, then volts, then thread. */
function modelsNotContradicted({ models, plate }: Question): readonly ModelFacts[] {
  const { first, last } = plate.made === undefined ? { first: -1e6, last: 1e6 } : readDays(plate.made)
  const threadOf = (model: ModelFacts) => model.stated.get(attributeKey(familyIdOf(1), 'thread'))
  let left = models
  const keep = (agrees: (model: ModelFacts) => boolean) => {
    if (left.some(agrees)) left = left.filter(agrees)
  }
  keep(model => model.made.first <= last && first <= model.made.last)
  if (plate.volts !== undefined) keep(model => model.volts === null || model.volts === plate.volts)
  if (plate.measured !== undefined)
    keep(model => [undefined, plate.measured?.thread].includes(threadOf(model)))
  return left
}

/** Every day on which anything changes, the day before and the day after, within what the plate and the model allow. */
function daysOfModel({ dossier, models, plate }: Question, model: ModelFacts): number[] {
  const spans = [...dossier.statements, ...dossier.replacements, ...models].map(({ made }) => made)
  const read = plate.made === undefined ? { first: -1e6, last: 1e6 } : readDays(plate.made)
  const ends = [
    read.first,
    read.last,
    ...spans.flatMap(({ first, last }) => [first - 1, first, last, last + 1]),
  ]
  const days = [...new Set(ends)].filter(day => Number.isFinite(day) && read.first <= day && day <= read.last)
  const inModel = days.filter(day => model.made.first <= day && day <= model.made.last)
  return inModel.length > 0 ? inModel : days
}

function readDays(made: string): { first: number; last: number } {
  const [year, month, day] = made.split('-').map(Number)
  const at = (y: number, m: number, d: number) => Date.UTC(y, m - 1, d) / 86_400_000
  if (year === undefined) throw new Error(`no year in ${made}`)
  if (month === undefined) return { first: at(year, 1, 1), last: at(year, 12, 31) }
  if (day === undefined) return { first: at(year, month, 1), last: at(year, month + 1, 0) }
  return { first: at(year, month, day), last: at(year, month, day) }
}

type Has = ConcreteAppliance['has']

function attributesOf({ plate }: Question, model: ModelFacts): Has[] {
  const thread = plate.measured?.thread ?? model.stated.get(attributeKey(familyIdOf(1), 'thread'))
  const supply = plate.volts ?? model.volts ?? undefined
  const choices = (stated: string | undefined, all: readonly string[]) =>
    stated === undefined ? all.map(value => ({ value, stated: false })) : [{ value: stated, stated: true }]
  return choices(thread, threads).flatMap(one =>
    choices(supply, volts).map(other => new Map([['thread', one] as const, ['volts', other] as const])),
  )
}

/** What a person would read there. An attribute counts as what the part needs, or anything else. */
export function readingOf(dossier: PartDossier, completion: Completion, reading: string): string {
  const { model, day, serial, has } = completion
  if (reading === 'brand') return model.brand
  if (reading === 'made') return String(day)
  if (reading === 'serial') return String(serial)
  if (reading.startsWith('character ')) return model.key[Number(reading.slice(10)) - 1] ?? ''
  const values = [...dossier.parts.values()].map(part => part.attributes.get(reading))
  const value = has.get(reading)?.value ?? ''
  return values.includes(value) ? value : 'other'
}
