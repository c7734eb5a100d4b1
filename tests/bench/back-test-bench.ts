import {
  type BackTest,
  type Played,
  playOurs,
  playRule,
  type RuleOfThumb,
  rulesOfThumb,
  stockAt,
} from './back-test.ts'
import { readCarParts } from './read-car-parts.ts'

const asked = [0.9, 0.95, 0.98]
const targets = [0.8, 0.85, 0.88, 0.9, 0.92, 0.94, 0.95, 0.96, 0.97, 0.98, 0.985, 0.99, 0.995]
/** Less stock than the first rule of thumb, and than the better of the other two, at the same fill rate. */
const must: Record<number, readonly [first: number, others: number]> = { 0.9: [12, 4], 0.95: [15, 12] }

/**
 * Stock needed for the same achieved fill rate, beside rules of thumb tuned over their factor; months 37 to 51 of the car
 * parts, refreshed every month. Before it, the same on months 25 to 36, on which everything was chosen.
 */
export async function run(): Promise<void> {
  const parts = readCarParts()
  // Before then, many of the parts had not been asked for yet, and nobody could have known of them.
  const known = parts.filter(demand => demand.subarray(0, 24).some(pieces => pieces > 0))
  for (const leadMonths of [1, 2]) {
    report('months 25-36, for choosing', { parts: known, from: 24, to: 36, leadMonths })
    report('months 37-51', { parts, from: 36, to: 51, leadMonths })
  }
}

function report(what: string, test: BackTest): void {
  const began = performance.now()
  const ours = playOurs(test, targets)
  const seconds = ((performance.now() - began) / 1000).toFixed(1)
  console.log(`  ${what}, lead time ${test.leadMonths}, ${test.parts.length} parts (${seconds} s)`)
  const achieved = asked.map(target => {
    const found = ours[targets.indexOf(target)]
    return `${percent(target)}: ${percent(found?.fillRate ?? Number.NaN)}`
  })
  console.log(`    achieved for a target of ${achieved.join(', ')} (must be within 2 points)`)
  const rules = Object.keys(rulesOfThumb) as RuleOfThumb[]
  const theirs = rules.map(rule => playRule(test, rule))
  const highest = Math.max(...ours.map(played => played.fillRate))
  for (const fillRate of asked) {
    const own = stockAt(ours, fillRate)
    const less = theirs.map(played => 100 * (1 - own / stockAt(played, fillRate)))
    const [first, others] = must[fillRate] ?? []
    const wanted = first === undefined ? '' : `; must ${first} and ${others}`
    console.log(
      Number.isNaN(own)
        ? `    at ${percent(fillRate)}: ours comes to ${percent(highest)} at most`
        : `    at ${percent(fillRate)}: ${own.toFixed(0)} pieces, less by ${less.map(share).join(', ')} %${wanted}`,
    )
  }
  for (const [at, rule] of rules.entries()) console.log(`      ${at + 1}: ${rule} ${reach(theirs[at] ?? [])}`)
}

/** A rule that keeps nothing of what did not sell last year may never come so far. */
function share(less: number): string {
  return Number.isNaN(less) ? '(out of its reach)' : less.toFixed(1)
}

function reach(played: readonly Played[]): string {
  return `(reaches ${percent(Math.max(...played.map(({ fillRate }) => fillRate)))} at most)`
}

function percent(rate: number): string {
  return `${(100 * rate).toFixed(1)} %`
}
