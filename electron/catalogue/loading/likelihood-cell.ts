import { text } from './cells.ts'

export interface Likelihood {
  readonly outcome: string
  readonly likelihood: number
}

/** Rounding of figures with two or three decimals never comes to this. */
const sumTolerance = 1e-6

/**
 * Outcomes with how likely each is, `within=0.9|low=0.02|high=0.08`, which make 1 together. None is impossible or
 * certain: people misread, and meters slip, so one answer never settles a job by itself.
 */
export const likelihoods = text.transform((cell, context): readonly Likelihood[] => {
  const read = cell.split('|').map(readOne)
  const fault = findFault(read, cell)
  if (fault !== undefined) context.addIssue({ code: 'custom', message: fault })
  return read.filter(one => one !== undefined)
})

function readOne(entry: string): Likelihood | undefined {
  const found = /^\s*([^=]*[^=\s])\s*=\s*(0?\.\d{1,4})\s*$/.exec(entry)
  const likelihood = Number(found?.[2])
  return found?.[1] === undefined || likelihood === 0 ? undefined : { outcome: found[1], likelihood }
}

function findFault(read: readonly (Likelihood | undefined)[], cell: string): string | undefined {
  const unread = read.indexOf(undefined)
  if (unread >= 0)
    return `“${cell.split('|')[unread]?.trim()}” is no outcome with its likelihood: write within=0.9, between 0 and 1, with a | between two`
  const outcomes = read.map(one => one?.outcome)
  const twice = outcomes.find((outcome, at) => outcomes.indexOf(outcome) < at)
  if (twice !== undefined) return `gives “${twice}” twice: keep one`
  if (read.length < 2) return 'has one outcome: a check that can end in one way only tells nothing'
  const sum = read.reduce((total, one) => total + (one?.likelihood ?? 0), 0)
  if (Math.abs(sum - 1) > sumTolerance)
    return `makes ${Number(sum.toFixed(4))} together: write likelihoods that make 1`
  return undefined
}
