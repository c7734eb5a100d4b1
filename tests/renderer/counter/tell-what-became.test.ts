import { expect, test } from 'vitest'
import { findMissing, type Told } from '../../../renderer/counter/tell-what-became.ts'

const check = (told: Partial<Told>, missing: RegExp | undefined) => {
  const found = findMissing({ became: 'confirmed', job: '', words: '', initials: 'AB', ...told })
  if (missing === undefined) expect(found).toBeUndefined()
  else expect(found).toMatch(missing)
}

test.each<[string, Partial<Told>, RegExp | undefined]>([
  ['a fit with its job', { job: 'J1' }, undefined],
  ['a fit without a job', { job: ' ' }, /Name the job/],
  ['a return with its reason, and no job', { became: 'wrong-fit', words: 'too wide' }, undefined],
  ['a return without a reason', { became: 'wrong-fit', job: 'J1' }, /Say why it did not fit/],
  ['a settled return with how', { became: 'settled', words: 'wrong bag' }, undefined],
  ['a settled return without how', { became: 'settled', words: '  ' }, /Say how the return was settled/],
  ['a correction with its reason', { became: 'excluded', words: 'fouls the sump' }, undefined],
  ['a correction without a reason', { became: 'excluded', words: ' ' }, /Say why it must not go into/],
  [
    'a withdrawal without a reason',
    { became: 'withdrawn', job: 'J1' },
    /Say why the correction is withdrawn/,
  ],
  ['nobody’s initials', { job: 'J1', initials: '' }, /Sign with your initials/],
  ['initials that are a number', { job: 'J1', initials: '12' }, /Sign with your initials/],
  ['blanks round initials', { job: 'J1', initials: ' cd ' }, undefined],
])('%s', (_title, told, missing) => check(told, missing))
