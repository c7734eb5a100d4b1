import { readFileSync } from 'node:fs'
import path from 'node:path'

/** What any of the topics is computed from. */
export interface ReferenceInputs {
  readonly ADI: number
  readonly CV2: number
  readonly G: number
  readonly K: number
  readonly Q: number
  readonly S: number
  readonly alpha: number
  readonly beta: number
  readonly breakpoints: readonly number[]
  readonly d: number
  readonly demand: number
  readonly demandOneWeekIn: number
  readonly from: number
  readonly h: number
  readonly holdingRate: number
  readonly inventoryPosition: number
  readonly items: Readonly<Record<string, number>>
  readonly leadTime: number
  readonly leadTimeDays: number
  readonly leadTimeWeeks: number
  readonly mean: number
  readonly meanLTD: number
  readonly meanLeadTimeDays: number
  readonly meanOverProtectionInterval: number
  readonly meanPerDay: number
  readonly meanPerPeriod: number
  readonly meanPerWeek: number
  readonly minimumOrder: number
  readonly monthsByYear: readonly (readonly number[])[]
  readonly need: number
  readonly onHand: number
  readonly orderIntervalDays: number
  readonly orders: number
  readonly p: number
  readonly r: number
  readonly pack: number
  readonly quarterMeans: readonly number[]
  readonly review: number
  readonly s: number
  readonly scale: number
  readonly sd: number
  readonly sdLTD: number
  readonly sdLeadTimeDays: number
  readonly sdPerDay: number
  readonly sdPerPeriod: number
  readonly sdPerWeek: number
  readonly series: readonly number[]
  readonly serviceLevel: number
  readonly shape: number
  readonly sizes: Readonly<Record<string, number>>
  readonly stock: number
  readonly stockoutRisk: number
  readonly target: number
  readonly targetFill: number
  readonly theta: number
  readonly unitPrices: readonly number[]
  readonly variance: number
  readonly weekly: Readonly<Record<string, number>>
  readonly weeks: number
  readonly z: number
}

/** A published or independently computed value, with its source beside it. */
export interface ReferenceValue {
  readonly id: string
  readonly topic: string
  /** Each topic has its own; a check names those of its topic. */
  readonly inputs: ReferenceInputs
  readonly expected: number | string | Readonly<Record<string, number | readonly (number | string)[]>>
  readonly tolerance: number
  readonly source: { readonly author: string; readonly title: string; readonly year: number | null }
}

const values: readonly ReferenceValue[] = JSON.parse(
  readFileSync(path.join(import.meta.dirname, 'reference-values.json'), 'utf8'),
)

/** The values whose topic begins so; there is at least one, or the check would check nothing. */
export function valuesOn(topic: string): readonly ReferenceValue[] {
  const found = values.filter(value => value.topic.startsWith(topic))
  if (found.length === 0) throw new Error(`no reference value is about ${topic}`)
  return found
}
