/** A figure as a meter shows it, in three figures that count: `26.5 Ω`, `12.1 kΩ`, `2.20 MΩ`. */
export function wordFigure(value: number, unit: string): string {
  if (value === Number.POSITIVE_INFINITY) return 'an open circuit'
  const [scale, prefix] = unit === 'Ω' ? scaleOhms(Math.abs(value)) : [1, '']
  return `${round(value / scale)} ${prefix}${unit}`.trim()
}

function scaleOhms(ohms: number): readonly [scale: number, prefix: string] {
  if (ohms >= 1e6) return [1e6, 'M']
  return ohms >= 1e3 ? [1e3, 'k'] : [1, '']
}

function round(value: number): string {
  return Math.abs(value) >= 100 ? String(Math.round(value)) : String(Number(value.toPrecision(3)))
}
