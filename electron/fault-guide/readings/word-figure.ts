/** A figure as a meter shows it, in three figures that count: `26.5 Ω`, `12.1 kΩ`, `2.20 MΩ`. */
export function wordFigure(value: number, unit: string): string {
  if (value === Number.POSITIVE_INFINITY) return 'an open circuit'
  const [scale, prefix] = unit === 'Ω' ? scaleOhms(Math.abs(value)) : [1, '']
  return `${round(value / scale)} ${prefix}${unit}`.trim()
}

/** Between the limits, or what is the least or the most. */
export function wordLimits(
  { low, high }: { readonly low: number; readonly high: number },
  unit: string,
): string {
  if (low === Number.NEGATIVE_INFINITY) return `at most ${wordFigure(high, unit)}`
  if (high === Number.POSITIVE_INFINITY) return `at least ${wordFigure(low, unit)}`
  return `${wordFigure(low, unit)} to ${wordFigure(high, unit)}`
}

function scaleOhms(ohms: number): readonly [scale: number, prefix: string] {
  if (ohms >= 1e6) return [1e6, 'M']
  return ohms >= 1e3 ? [1e3, 'k'] : [1, '']
}

function round(value: number): string {
  return Math.abs(value) >= 100 ? String(Math.round(value)) : String(Number(value.toPrecision(3)))
}
