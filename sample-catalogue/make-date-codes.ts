import type { SparseRow } from './catalogue-rows.ts'

/**
 * How some brands write the made date into the serial. `means` is a list parted by `;` of `group=how`:
 * `4-digit` and `2-digit` are plain figures (14 is 2014, or week 14), `1-digit` is the last figure of a year whose decade
 * the model's made dates settle, and `letter A=2010` counts letters on from A, the ones after `skip` left out.
 */
export const dateCodes: readonly SparseRow<'date_codes.csv'>[] = [
  {
    brand: 'Ostrel',
    pattern: '^(?<year>\\d{2})(?<week>0[1-9]|[1-4]\\d|5[0-3])\\d{5}$',
    means: 'year=2-digit;week=2-digit',
  },
  {
    brand: 'Brennick',
    pattern: '^(?<year>\\d)(?<week>0[1-9]|[1-4]\\d|5[0-3])\\d{6}$',
    means: 'year=1-digit;week=2-digit',
  },
  {
    brand: 'Marrowby',
    pattern: '^(?<year>[A-HJ-NP-Z])(?<month>0[1-9]|1[0-2])-?\\d{5}$',
    means: 'year=letter A=2004 skip I O;month=2-digit',
  },
  {
    brand: 'Tavolme',
    pattern: '^TV(?<year>20\\d{2})(?<month>0[1-9]|1[0-2])\\d{4}$',
    means: 'year=4-digit;month=2-digit',
  },
  {
    brand: 'Wexmoor',
    pattern: '^(?<month>[A-HJ-M])(?<year>\\d{2})\\d{6}$',
    means: 'year=2-digit;month=letter A=1 skip I',
  },
  { brand: 'Lövane', pattern: '^\\d{3}-(?<year>\\d{2})-\\d{6}$', means: 'year=2-digit' },
]
