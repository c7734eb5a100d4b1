/** Days from an order to its delivery, and how much they vary. */
export interface LeadTime {
  readonly days: number
  readonly deviation: number
  readonly from: 'given' | 'deliveries' | 'supplier' | 'assumed'
}

export interface LeadTimeFacts {
  /** In place of all that is known. */
  readonly given: number | undefined
  /** What the supplier states; null where it states nothing. */
  readonly stated: number | null
  /** Where nothing is stated either. */
  readonly assumed: number
  /** Days that real deliveries took. */
  readonly delivered: readonly number[]
}

/**
 * What real deliveries took, begun with what the supplier states as if it had delivered so a few times already, each time
 * off by some share; so one odd delivery does not turn everything over. A lead time that is given is exact.
 */
export function estimateLeadTime({ given, stated, assumed, delivered }: LeadTimeFacts): LeadTime {
  if (given !== undefined) return { days: given, deviation: 0, from: 'given' }
  const prior = stated ?? assumed
  const weight = priorDeliveries + delivered.length
  const days = (priorDeliveries * prior + sumOf(delivered)) / weight
  const squares =
    priorDeliveries * ((priorShareOff * prior) ** 2 + (prior - days) ** 2) +
    sumOf(delivered.map(took => (took - days) ** 2))
  const from = delivered.length > 0 ? 'deliveries' : stated === null ? 'assumed' : 'supplier'
  return { days, deviation: Math.sqrt(squares / weight), from }
}

/** Assumptions of this program: a supplier's word is worth three deliveries, each a quarter of the time off. */
const priorDeliveries = 3
const priorShareOff = 0.25

function sumOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0)
}
