import type { Belief } from '../../electron/fault-guide/reasoning/belief.ts'
import {
  type FaultCase,
  type GivenAnswer,
  weighCase,
} from '../../electron/fault-guide/reasoning/weigh-case.ts'
import { rankCauses } from '../../electron/fault-guide/reasoning/weigh-causes.ts'
import type { SeededRandom } from '../../sample-catalogue/seeded-random.ts'

/** What is really so, out of which jobs are drawn: the case's own probabilities, or others. */
export interface Truth {
  readonly prior: Belief
  readonly outcomes: ReadonlyMap<
    string,
    readonly { readonly outcome: string; readonly likelihoods: Belief }[]
  >
}

/** How the next check is chosen: by the policy, or one after another as they are listed. */
export type Order = 'policy' | 'listed'

export interface SimulatedJob {
  readonly trueCause: string
  /** Place of the true cause among the causes, and of its remedy among the remedies, from 1. */
  readonly placeOfCause: number
  readonly placeOfRemedy: number
  readonly end: 'settled' | 'cannot-tell'
  /** The guide's own minutes, and with what hazards and competence add. */
  readonly minutes: number
  readonly effort: number
  readonly checks: number
}

export function truthOf({ prior, checks }: FaultCase): Truth {
  return {
    prior,
    outcomes: new Map(checks.map(({ check, outcomes }) => [check, outcomes])),
  }
}

/**
 * One job: a cause is drawn, and each check that is asked shows an outcome drawn under it. Both orders stop by the same
 * rule and see the same machine: what a check would show is drawn before it is known which are asked.
 */
export function simulateJob(
  faultCase: FaultCase,
  truth: Truth,
  { random, minutesOf }: { readonly random: SeededRandom; readonly minutesOf: (check: string) => number },
): Readonly<Record<Order, SimulatedJob>> {
  const trueCause = draw(truth.prior, random)
  const shows = new Map(
    Array.from(truth.outcomes, ([check, outcomes]) => [
      check,
      draw(
        new Map(outcomes.map(({ outcome, likelihoods }) => [outcome, likelihoods.get(trueCause) ?? 0])),
        random,
      ),
    ]),
  )
  const run = (order: Order) => runJob(faultCase, { trueCause, shows, order, minutesOf })
  return { policy: run('policy'), listed: run('listed') }
}

interface DrawnJob {
  readonly trueCause: string
  readonly shows: ReadonlyMap<string, string>
  readonly order: Order
  readonly minutesOf: (check: string) => number
}

function runJob(faultCase: FaultCase, { trueCause, shows, order, minutesOf }: DrawnJob): SimulatedJob {
  const answers: GivenAnswer[] = []
  for (;;) {
    const { belief, remedies, end, checks } = weighCase(faultCase, answers)
    const next = order === 'policy' ? checks[0]?.check : nextListed(faultCase, answers)
    if (end.end === 'not-yet' && next !== undefined) {
      answers.push({ check: next, outcome: shows.get(next) ?? null })
      continue
    }
    const asked = answers.flatMap(({ check }) => faultCase.checks.filter(one => one.check === check))
    return {
      trueCause,
      placeOfCause: 1 + rankCauses(belief).findIndex(({ cause }) => cause === trueCause),
      placeOfRemedy: 1 + remedies.findIndex(({ remedy }) => remedy === faultCase.remedyOf(trueCause)),
      end: end.end === 'settled' ? 'settled' : 'cannot-tell',
      minutes: asked.reduce((all, { check }) => all + minutesOf(check), 0),
      effort: asked.reduce((all, { effort }) => all + effort, 0),
      checks: asked.length,
    }
  }
}

function nextListed({ checks }: FaultCase, answers: readonly GivenAnswer[]): string | undefined {
  return checks.find(({ check }) => answers.every(given => given.check !== check))?.check
}

function draw(shares: Belief, random: SeededRandom): string {
  let left = random.next() * [...shares.values()].reduce((all, share) => all + share, 0)
  let last = ''
  for (const [key, share] of shares) {
    last = key
    left -= share
    if (left < 0) break
  }
  return last
}

/** The truth where the guide is wrong: every weight and every likelihood is multiplied by e to a normal error of this size. */
export function perturb({ prior, outcomes }: Truth, size: number, random: SeededRandom): Truth {
  const shake = (share: number) => share * Math.exp(size * normal(random))
  return {
    prior: new Map(Array.from(prior, ([cause, share]) => [cause, shake(share)])),
    outcomes: new Map(
      Array.from(outcomes, ([check, listed]) => [
        check,
        listed.map(({ outcome, likelihoods }) => ({
          outcome,
          likelihoods: new Map(Array.from(likelihoods, ([cause, share]) => [cause, shake(share)])),
        })),
      ]),
    ),
  }
}

/** Box and Muller's transform of two even numbers. */
function normal(random: SeededRandom): number {
  return Math.sqrt(-2 * Math.log(1 - random.next())) * Math.cos(2 * Math.PI * random.next())
}

export interface JobsSummary {
  readonly jobs: number
  readonly causeInTopTwo: number
  readonly remedyInTopTwo: number
  readonly settled: number
  readonly minutes: Readonly<Record<Order, number>>
  readonly effort: Readonly<Record<Order, number>>
  readonly checks: Readonly<Record<Order, number>>
}

export function summariseJobs(jobs: readonly Readonly<Record<Order, SimulatedJob>>[]): JobsSummary {
  const share = (holds: (job: SimulatedJob) => boolean) =>
    mean(jobs.map(({ policy }) => (holds(policy) ? 1 : 0)))
  const means = (of: (job: SimulatedJob) => number) => ({
    policy: mean(jobs.map(({ policy }) => of(policy))),
    listed: mean(jobs.map(({ listed }) => of(listed))),
  })
  return {
    jobs: jobs.length,
    causeInTopTwo: share(({ placeOfCause }) => placeOfCause <= 2),
    remedyInTopTwo: share(({ placeOfRemedy }) => placeOfRemedy <= 2),
    settled: share(({ end }) => end === 'settled'),
    minutes: means(({ minutes }) => minutes),
    effort: means(({ effort }) => effort),
    checks: means(({ checks }) => checks),
  }
}

function mean(figures: readonly number[]): number {
  return figures.reduce((all, figure) => all + figure, 0) / figures.length
}

export function wordSummary(what: string, { jobs, minutes, effort, checks, ...shares }: JobsSummary): string {
  const percent = (share: number) => `${(100 * share).toFixed(1)} %`
  const pair = ({ policy, listed }: Readonly<Record<Order, number>>) =>
    `${policy.toFixed(1)} against ${listed.toFixed(1)} (${percent(1 - policy / listed)} less)`
  return [
    `${what}, ${jobs} jobs: true cause in the top two in ${percent(shares.causeInTopTwo)}, its remedy in ${percent(shares.remedyInTopTwo)}, settled in ${percent(shares.settled)}`,
    `  mean minutes ${pair(minutes)}; with hazards and competence ${pair(effort)}; checks ${pair(checks)}`,
  ].join('\n')
}

/** So many jobs of every case; where the guide is off by an error, each in a world of its own. */
export function simulateSample(
  cases: readonly { readonly faultCase: FaultCase; readonly minutesOf: (check: string) => number }[],
  {
    jobsEach,
    error,
    random,
  }: { readonly jobsEach: number; readonly error: number; readonly random: SeededRandom },
): Readonly<Record<Order, SimulatedJob>>[] {
  return cases.flatMap(({ faultCase, minutesOf }) =>
    Array.from({ length: jobsEach }, () => {
      const truth = error === 0 ? truthOf(faultCase) : perturb(truthOf(faultCase), error, random)
      return simulateJob(faultCase, truth, { random, minutesOf })
    }),
  )
}
