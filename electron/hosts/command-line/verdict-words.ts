import type { Verdict } from '../../../shared-schemas/fit-check.ts'

/** A verdict as a colleague would say it. */
export const verdictWords: Readonly<Record<Verdict, string>> = {
  fits: 'fits',
  'fits-with-changes': 'fits, with something besides',
  ask: 'not decided yet',
  'does-not-fit': 'does not fit',
  'no-record': 'no record; do not take it for a yes',
}
