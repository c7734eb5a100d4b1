export type DemandClass = 'smooth' | 'intermittent' | 'erratic' | 'lumpy' | 'none'

export interface DemandShape {
  /** Periods between two demands, on average; at least 1. */
  readonly interval: number
  /** Squared coefficient of variation of the sizes: sample variance (n - 1) over the squared mean. */
  readonly variation: number
}

/** Mean interval and squared variation of a series of demands by period. Undefined where nothing was asked for. */
export function shapeOfDemand(series: readonly number[]): DemandShape | undefined {
  const sizes = series.filter(size => size > 0)
  if (sizes.length === 0) return undefined
  const mean = sizes.reduce((sum, size) => sum + size, 0) / sizes.length
  const squares = sizes.reduce((sum, size) => sum + (size - mean) ** 2, 0)
  const variance = sizes.length > 1 ? squares / (sizes.length - 1) : 0
  return { interval: series.length / sizes.length, variation: variance / mean ** 2 }
}

/**
 * The class by interval and variation (Syntetos, Boylan and Croston, On the categorization of demand patterns, Journal of
 * the Operational Research Society 56, 2005): cut at 1.32 periods and 0.49.
 */
export function classifyDemand(shape: DemandShape | undefined): DemandClass {
  if (shape === undefined) return 'none'
  const [isRare, isVaried] = [shape.interval >= 1.32, shape.variation >= 0.49]
  if (isRare) return isVaried ? 'lumpy' : 'intermittent'
  return isVaried ? 'erratic' : 'smooth'
}
