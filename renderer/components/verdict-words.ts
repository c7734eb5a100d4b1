import type { Verdict } from '../../shared-schemas/fit-check.ts'

/** The verdicts as they stand on the screen and on the slip. */
export const verdictWords: Readonly<Record<Verdict, string>> = {
  fits: 'Fits',
  'fits-with-changes': 'Fits, with changes',
  ask: 'Ask',
  'does-not-fit': 'Does not fit',
  'no-record': 'No record',
}
