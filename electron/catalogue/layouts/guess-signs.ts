import type { ColumnMatch } from '../../../shared-schemas/supplier-layouts.ts'
import { convertDate } from './convert-date.ts'
import { convertNumber } from './convert-number.ts'

export type GuessedSigns = Pick<ColumnMatch, 'decimalSign' | 'thousands'>

/**
 * The decimal sign with which all samples are figures, their thousands parted only where they are none otherwise. No
 * sign where none does it or the other would too, as with 1.234: that must be asked.
 */
export function guessSigns(samples: readonly string[]): GuessedSigns {
  const unknown = { decimalSign: null, thousands: false }
  if (!samples.some(sample => /[.,]/.test(sample))) return unknown
  const fitting = (['.', ','] as const).flatMap(decimalSign => {
    const thousands = [false, true].find(parted =>
      samples.every(sample => convertNumber(sample, { decimalSign, thousands: parted }).ok),
    )
    return thousands === undefined ? [] : [{ decimalSign, thousands }]
  })
  return fitting.length === 1 ? (fitting[0] ?? unknown) : unknown
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
