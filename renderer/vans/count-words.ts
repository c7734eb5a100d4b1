import type { CountLine, ExplanationKind } from '../../shared-schemas/van-counts.ts'

/** A share as people write it: whole tenths of a percent, and never rounded up to all of it. */
export function wordShare(share: number): string {
  const tenths = Math.floor(share * 1000) / 10
  return `${Number.isInteger(tenths) ? tenths : tenths.toFixed(1)} %`
}

/** How a line is off, in words. */
export function wordVariance({ book, counted, variance }: CountLine): string {
  if (book === null || counted === null || variance === null) return 'not counted'
  if (variance === 0) return `${counted}, as booked`
  return `booked ${book}, counted ${counted}: ${Math.abs(variance)} ${variance < 0 ? 'short' : 'over'}`
}

/** What the comparison comes to, in one or two sentences. */
export function wordComparison(lines: readonly CountLine[], accuracy: number | null): string {
  const counted = lines.filter(line => line.counted !== null)
  if (accuracy === null || counted.length === 0) return 'Nothing is counted yet.'
  const within = counted.filter(({ isWithin }) => isWithin).length
  const off = counted.filter(isOff).length
  const right = `${within} of ${counted.length} ${counted.length === 1 ? 'line is' : 'lines are'} right within tolerance: ${wordShare(accuracy)}.`
  return off === 0 ? `${right} Nothing is off.` : `${right} ${off} ${off === 1 ? 'is' : 'are'} off.`
}

export function isOff({ variance }: CountLine): boolean {
  return variance !== null && variance !== 0
}

/** Lines that nobody has said anything of yet. */
export function listOpen(lines: readonly CountLine[]): CountLine[] {
  return lines.filter(line => isOff(line) && line.settled === null)
}

export const reasonNames: Readonly<Record<ExplanationKind, string>> = {
  swap: 'swapped',
  'replaced-number': 'old or new number',
  'job-line': 'job not booked',
  transfer: 'transfer',
  pack: 'packs',
  digits: 'miswritten',
  loss: 'lost',
  find: 'found',
}
