import { type Interval, readValue, type StatedValue } from '../catalogue/measured-values.ts'

/** How a family's attribute must agree between the part and the appliance. */
export interface AttributeRule {
  readonly attribute: string
  readonly unit: string
  readonly rule: 'equal' | 'within' | 'at-least' | 'at-most' | 'covers'
  /** Relative to the appliance's value; only for `within`. */
  readonly tolerance: number | null
}

export type Agreement = 'agrees' | 'disagrees' | 'unknown'

/**
 * Whether the part's value satisfies the rule for the appliance's value. The part's alternatives are all offered, so
 * any of them will do. The appliance's alternatives are one or the other, so it agrees only if it would with each, and
 * is unknown between. A missing or unreadable value is unknown, and unknown is not agreement.
 */
export function compareAttribute(
  rule: AttributeRule,
  { part, appliance }: { readonly part: string | undefined; readonly appliance: string | undefined },
): Agreement {
  if (part === undefined || appliance === undefined) return 'unknown'
  const [offered, wanted] = [readValue(part, rule.unit), readValue(appliance, rule.unit)]
  if (offered === undefined || wanted === undefined) return 'unknown'
  if (offered.kind === 'words' || wanted.kind === 'words') return compareWords(rule, offered, wanted)
  const answers = wanted.alternatives.map(needed =>
    offered.alternatives.some(one => satisfies(rule, one, needed)),
  )
  if (answers.every(answer => answer)) return 'agrees'
  return answers.some(answer => answer) ? 'unknown' : 'disagrees'
}

function compareWords({ rule }: AttributeRule, offered: StatedValue, wanted: StatedValue): Agreement {
  if (offered.kind !== 'words' || wanted.kind !== 'words') return 'unknown'
  if (offered.words === wanted.words) return 'agrees'
  if (rule !== 'at-least' && rule !== 'at-most') return 'disagrees'
  return compareClasses(rule, offered.words, wanted.words)
}

/** Classes of one series have an order, as S2 and S3 have; classes of two series, as P2 and S2, have none. */
function compareClasses(rule: 'at-least' | 'at-most', offered: string, wanted: string): Agreement {
  const [one, other] = [classOf(offered), classOf(wanted)]
  if (one === undefined || other === undefined || one.series !== other.series) return 'unknown'
  const isEnough = rule === 'at-least' ? one.number >= other.number : one.number <= other.number
  return isEnough ? 'agrees' : 'disagrees'
}

function classOf(words: string): { readonly series: string; readonly number: number } | undefined {
  const found = /^([A-Z]+)(\d+)$/.exec(words)
  return found === null ? undefined : { series: found[1] ?? '', number: Number(found[2]) }
}

/** No supply tolerance is added anywhere: a rating is what is printed. */
function satisfies({ rule, tolerance }: AttributeRule, part: Interval, appliance: Interval): boolean {
  switch (rule) {
    case 'equal':
      return near(part.low, appliance.low) && near(part.high, appliance.high)
    case 'within': {
      const room = (tolerance ?? 0) * Math.abs(appliance.high)
      return atMost(appliance.low - room, part.low) && atMost(part.high, appliance.high + room)
    }
    case 'at-least':
      return atMost(appliance.high, part.low)
    case 'at-most':
      return atMost(part.high, appliance.low)
    case 'covers':
      return atMost(part.low, appliance.low) && atMost(appliance.high, part.high)
  }
}

/** 12.6 is within 5 % of 12 although 12 × 1.05 is 12.600000000000001: the last bits are arithmetic, not measurement. */
const roundingError = 1e-9

function near(one: number, other: number): boolean {
  return Math.abs(one - other) <= roundingError * Math.max(Math.abs(one), Math.abs(other))
}

function atMost(one: number, other: number): boolean {
  return one <= other || near(one, other)
}
