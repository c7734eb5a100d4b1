import { type ApplianceType, applianceTypes } from './appliance-types.ts'
import type { SparseRow } from './catalogue-rows.ts'
import { chooseListedPart, suitsModel } from './choose-listed-part.ts'
import type { Fitted, TakenFamily } from './make-fitments.ts'
import type { SamplePart } from './make-parts.ts'
import { dayAfter } from './months.ts'
import { hashText, itemAt, type SeededRandom, seededRandom } from './seeded-random.ts'
import { type Symptom, symptoms } from './symptoms.ts'

/** Two whole years of Mondays to Sundays. */
export const firstDay = '2024-11-25'
export const lastDay = '2026-11-22'
export const vans: readonly string[] = ['van-1', 'van-2', 'van-3']

export type SampleJobs = {
  readonly jobs: readonly SparseRow<'jobs.csv'>[]
  readonly usage: readonly SparseRow<'usage.csv'>[]
}

/** Two years of house calls: a machine that was really sold, what was wrong with it, and the parts that went in. */
export function makeJobs(fitted: Fitted, parts: readonly SamplePart[]): SampleJobs {
  const random = seededRandom('jobs')
  const machines = rankMachines(fitted)
  const partsByFamily = Map.groupBy(parts, part => part.family)
  const jobs: SparseRow<'jobs.csv'>[] = []
  const usage: SparseRow<'usage.csv'>[] = []
  for (let day = firstDay; day <= lastDay; day = dayAfter(day, 1)) {
    for (const van of vans) {
      for (let call = countCalls(day, random); call > 0; call -= 1) {
        const job = `J${String(jobs.length + 20_001)}`
        const machine = pickMachine(machines, day, random)
        if (machine === undefined) continue
        const symptom = pickSymptom(machine.type, random)
        const needed = findNeeded(machine.taken, symptom, random)
        if (needed.length === 0) continue
        const isFirstVisit = random.chance(0.78)
        const fittedOn = isFirstVisit ? day : dayAfter(day, random.between(3, 12))
        jobs.push(writeJob({ job, day, van, symptom, needed, isFirstVisit }))
        if (fittedOn > lastDay) continue
        usage.push(...writeUsage({ job, day: fittedOn, van, needed, partsByFamily }))
      }
    }
  }
  return { jobs, usage }
}

type Machine = { readonly type: ApplianceType; readonly taken: readonly TakenFamily[] }
type Needed = readonly [TakenFamily, ...TakenFamily[]] | readonly []

/** A few numbers are everywhere and most are seldom seen: the weights fall as one over the rank. */
function rankMachines(fitted: Fitted): ReadonlyMap<ApplianceType, readonly Machine[]> {
  const byModel = Map.groupBy(fitted.taken, ({ model }) => `${model.brand}\t${model.modelNumber}`)
  const machines = [...byModel].map(([key, taken]) => ({ key, taken, type: itemAt(taken, 0).model.type }))
  machines.sort((one, other) => hashText(`rank ${one.key}`) - hashText(`rank ${other.key}`))
  return Map.groupBy(machines, machine => machine.type)
}

function countCalls(day: string, random: SeededRandom): number {
  const weekday = new Date(`${day}T00:00:00Z`).getUTCDay()
  if (weekday === 0) return 0
  return weekday === 6 ? random.between(0, 1) : random.between(1, 4)
}

/** Dryers are mended in the dark months, fridges in the warm ones. */
const seasons: Readonly<Record<ApplianceType, (month: number) => number>> = {
  dishwasher: () => 9,
  washer: () => 9,
  dryer: month => (month <= 2 || month >= 11 ? 7 : month >= 5 && month <= 8 ? 1 : 3),
  oven: month => (month === 12 ? 7 : 4),
  hob: () => 2,
  fridge: month => (month >= 6 && month <= 8 ? 9 : 2),
  microwave: () => 1,
  vacuum: () => 1,
}

function pickMachine(
  machines: ReadonlyMap<ApplianceType, readonly Machine[]>,
  day: string,
  random: SeededRandom,
): Machine | undefined {
  const month = Number(day.slice(5, 7))
  const type = pickWeighted(applianceTypes, applianceType => seasons[applianceType](month), random)
  const ranked = machines.get(type) ?? []
  // A power of an even draw falls off with rank much as Zipf's law does, and needs no table.
  return ranked[Math.floor(ranked.length ** random.next()) - 1]
}

function pickSymptom(type: ApplianceType, random: SeededRandom): Symptom {
  return pickWeighted(symptoms[type], symptom => symptom.weight, random)
}

function pickWeighted<Item>(
  list: readonly Item[],
  weigh: (item: Item) => number,
  random: SeededRandom,
): Item {
  const total = list.reduce((sum, item) => sum + weigh(item), 0)
  let rest = random.next() * total
  for (const item of list) {
    rest -= weigh(item)
    if (rest < 0) return item
  }
  return itemAt(list, list.length - 1)
}

/** Mostly the likeliest of the symptom's kinds that the machine has, and sometimes the next one with it. */
function findNeeded(taken: readonly TakenFamily[], symptom: Symptom, random: SeededRandom): Needed {
  const candidates = symptom.kinds.flatMap(kind =>
    taken.filter(one => one.family.kind.kind === kind).slice(0, 1),
  )
  const place = Math.min(Math.floor(random.next() ** 2 * candidates.length), candidates.length - 1)
  const [first, second] = candidates.slice(Math.max(place, 0))
  if (first === undefined) return []
  return second !== undefined && random.chance(0.12) ? [first, second] : [first]
}

function writeJob(facts: {
  readonly job: string
  readonly day: string
  readonly van: string
  readonly symptom: Symptom
  readonly needed: Needed
  readonly isFirstVisit: boolean
}): SparseRow<'jobs.csv'> {
  const model = facts.needed[0]?.model
  return {
    job: facts.job,
    date: facts.day,
    van: facts.van,
    brand: model?.brand ?? '',
    model_number: model?.modelNumber ?? '',
    symptom: facts.symptom.says,
    families_needed: facts.needed.map(({ family }) => family.code).join('|'),
    finished_first_visit: facts.isFirstVisit ? 'yes' : 'no',
  }
}

function writeUsage(facts: {
  readonly job: string
  readonly day: string
  readonly van: string
  readonly needed: Needed
  readonly partsByFamily: ReadonlyMap<string, readonly SamplePart[]>
}): SparseRow<'usage.csv'>[] {
  return facts.needed.flatMap(({ model, family }) => {
    const chosen = chooseFitted(facts.job, { model, family }, facts.partsByFamily.get(family.code) ?? [])
    if (chosen === undefined) return []
    const quantity = String(
      family.kind.quantity === undefined || family.kind.quantity > 4 ? 1 : family.kind.quantity,
    )
    return [
      { date: facts.day, location: facts.van, part_number: chosen.partNumber, quantity, job: facts.job },
    ]
  })
}

/** Of a safety device the part that is listed. Of all else the shop has a favourite in each family and takes another now and then. */
function chooseFitted(
  job: string,
  { model, family }: Pick<TakenFamily, 'model' | 'family'>,
  partsOfFamily: readonly SamplePart[],
): SamplePart | undefined {
  if (family.kind.safetyDevice) return chooseListedPart(model, family, partsOfFamily)
  const [part, other] = partsOfFamily.filter(
    one => one.replacedBy === '' && !one.isPlanted && suitsModel(one, model, family),
  )
  return other !== undefined && hashText(job) % 10 >= 8 ? other : part
}
