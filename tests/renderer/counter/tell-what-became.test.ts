import { expect, test } from 'vitest'
import { findMissing, listPlaces, type Told, tellOf } from '../../../renderer/counter/tell-what-became.ts'
import type { FitAnswer } from '../../../shared-schemas/fit-check.ts'

const check = (told: Partial<Told>, missing: RegExp | undefined) => {
  const found = findMissing({ became: 'confirmed', job: '', words: '', place: '', initials: 'AB', ...told })
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

const statement = (says: 'includes' | 'excludes', position: string | null) => ({ says, position })

const placesOf = (...statements: ReturnType<typeof statement>[]) =>
  listPlaces({ why: { statements } } as unknown as FitAnswer)

test('places are told apart where the part is listed for several', () => {
  expect(placesOf(statement('includes', 'upper'), statement('includes', 'lower'))).toEqual(['lower', 'upper'])
})

test('one place, none, or one that is only forbidden leaves nothing to choose', () => {
  expect(placesOf(statement('includes', 'upper'), statement('includes', null))).toEqual([])
  expect(placesOf(statement('includes', 'upper'), statement('excludes', 'lower'))).toEqual([])
  expect(listPlaces({ why: null } as unknown as FitAnswer)).toEqual([])
})

test.each([
  ['a correction of one place names it', 'lower', { position: 'lower' }],
  ['a correction of the whole model names none', '', {}],
])('%s', async (_title, place, named) => {
  const asked: unknown[] = []
  const answer = {
    model: { brand: 'Ostrel', modelNumber: 'ODW1' },
    part: { partNumber: '77' },
    cautions: [],
  } as unknown as FitAnswer
  const told: Told = { became: 'excluded', job: '', words: 'fouls the sump', place, initials: 'AB' }
  const tell = (async (...given: unknown[]) => asked.push(given)) as unknown as Parameters<typeof tellOf>[2]
  await tellOf(answer, told, tell)
  expect(asked).toEqual([
    [
      'fit-check.add-exclusion',
      { model: 'ODW1', brand: 'Ostrel', part: '77', initials: 'AB', ...named, reason: 'fouls the sump' },
    ],
  ])
})
