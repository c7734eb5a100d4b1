import type { ColumnMatch } from '../../../shared-schemas/supplier-layouts.ts'
import { convertDate } from './convert-date.ts'
import { convertNumber } from './convert-number.ts'

export type GuessedSigns = Pick<ColumnMatch, 'decimalSign' | 'thousands'>

/**
 * The one decimal sign with which all samples are figures, their thousands parted only where they are none otherwise;
 * no sign where both do, or neither.
 */
export function guessSigns(samples: readonly string[]): GuessedSigns {
  const isTold = samples.some(sample => /[.,]/.test(sample))
  for (const thousands of isTold ? [false, true] : []) {
    const fitting = (['.', ','] as const).filter(decimalSign =>
      samples.every(sample => convertNumber(sample, { decimalSign, thousands }).ok),
    )
    if (fitting.length === 1) return { decimalSign: fitting[0] ?? null, thousands }
    if (fitting.length > 1) break
  }
  return { decimalSign: null, thousands: false }
}

/**
 * The one order in which all samples are dates. Where several do and read every sample alike, the first of them; where
 * they read one differently, null: that must be asked.
 */
export function guessDateOrder(samples: readonly string[]): ColumnMatch['dateOrder'] {
  if (samples.length === 0) return null
  const readings = (['ymd', 'dmy', 'mdy'] as const).flatMap(order => {
    const read = samples.map(sample => convertDate(sample, order))
    return read.every(({ ok }) => ok) ? [{ order, text: JSON.stringify(read) }] : []
  })
  const isSame = readings.every(({ text }) => text === readings[0]?.text)
  return isSame ? (readings[0]?.order ?? null) : null
}
