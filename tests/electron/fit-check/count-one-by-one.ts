import type { ReadingChoice } from '../../../electron/fit-check/tabulate-readings.ts'
import type { OpenKind } from '../../builders/open-kinds.ts'

interface Weighed {
  readonly key: string
  readonly brand: string
  readonly shows: Readonly<Record<string, string>>
  readonly sold: number
  /** Each model counts as one, each way of a model as much as another. */
  readonly weight: number
}

type Named = Pick<ReadingChoice, 'reading' | 'position'>

function everyAppliance(kinds: readonly OpenKind[]): Weighed[] {
  return kinds.flatMap(({ models, ways }) =>
    models.flatMap(([key, brand]) => ways.map(way => ({ key, brand, ...way, weight: 1 / ways.length }))),
  )
}

function shown({ key, brand, shows }: Weighed, { reading, position }: Named): string {
  if (position !== null) return key[position - 1] ?? ''
  return reading === 'brand' ? brand : (shows[reading] ?? '')
}

/** By what was read, how many appliances would be sold each part; every appliance is looked at by itself. */
function soldByShown(kinds: readonly OpenKind[], read: readonly Named[]): number[][] {
  const groups = Map.groupBy(everyAppliance(kinds), one => read.map(reading => shown(one, reading)).join())
  return [...groups.values()].map(group =>
    [...Map.groupBy(group, ({ sold }) => sold).values()].map(alike =>
      alike.reduce((sum, { weight }) => sum + weight, 0),
    ),
  )
}

const sumOf = (numbers: readonly number[]) => numbers.reduce((sum, one) => sum + one, 0)

/** How many models are undecided once this has been read. */
export function undecidedOneByOne(kinds: readonly OpenKind[], read: readonly Named[]): number {
  return sumOf(soldByShown(kinds, read).map(sold => (sold.length > 1 ? sumOf(sold) : 0)))
}

/** Conditional entropy times the number of models: C. E. Shannon, A Mathematical Theory of Communication (1948), section 6, from memory. */
export function bitsOneByOne(kinds: readonly OpenKind[], read: readonly Named[]): number {
  return sumOf(
    soldByShown(kinds, read).map(sold => -sumOf(sold.map(count => count * Math.log2(count / sumOf(sold))))),
  )
}

/** How many readings are made in this order by people who stop once it is decided. */
export function readingsOneByOne(kinds: readonly OpenKind[], order: readonly Named[]): number {
  return sumOf(order.map((_, made) => undecidedOneByOne(kinds, order.slice(0, made))))
}
