import fc from 'fast-check'
import { expect, test } from 'vitest'
import {
  type DatedRun,
  datePeriods,
  decideOnDay,
  type FitmentChange,
  type Period,
  termsOnDay,
} from '../../../electron/fit-check/date-statements.ts'
import { decideFit } from '../../../electron/fit-check/decide-fit.ts'
import { asReadings } from '../../../electron/fit-check/read-question.ts'
import { aDossier, aModel, aStatement } from '../../builders/fit-dossier.ts'

/** The run of a day in November; the first run is that of the 1st. */
function runOf(day: number): DatedRun {
  return {
    loadRunId: day,
    at: `2026-11-${String(day).padStart(2, '0')}T17:30:00.000Z`,
    correctionReason: null,
  }
}
const said = (termsId: number, day: number): FitmentChange => ({ termsId, change: 'said', run: runOf(day) })
const withdrawn = (termsId: number, day: number): FitmentChange => ({
  termsId,
  change: 'withdrawn',
  run: runOf(day),
})

interface Case {
  now?: number[]
  changes?: FitmentChange[]
  firstRun?: DatedRun | null
}

/** Each period as `terms: from day to day`, an open side empty. */
const check = ({ now = [], changes = [], firstRun = runOf(1) }: Case, expected: string[]) => {
  const periods = datePeriods({ termsIds: new Set(now), changes, firstRun })
  expect(periods.map(wordPeriod)).toEqual(expected)
}
function wordPeriod({ termsId, since, until }: Period): string {
  return `${termsId}: ${since?.loadRunId ?? ''} to ${until?.loadRunId ?? ''}`
}

test.each<[string, Case, string[]]>([
  ['what has no change came with the first fitments', { now: [7] }, ['7: 1 to ']],
  ['what was said before dates were kept has no beginning', { now: [7], firstRun: null }, ['7:  to ']],
  ['what was added later is said since then', { now: [7], changes: [said(7, 4)] }, ['7: 4 to ']],
  ['what was taken back was said from the first', { changes: [withdrawn(7, 4)] }, ['7: 1 to 4']],
  [
    'what was taken back and said again has two periods',
    { now: [7], changes: [withdrawn(7, 4), said(7, 9)] },
    ['7: 1 to 4', '7: 9 to '],
  ],
  ['what came and went in one run was never said', { changes: [said(7, 4), withdrawn(7, 4)] }, []],
  [
    'what was taken back twice ended the first time',
    { changes: [withdrawn(7, 4), withdrawn(7, 9)] },
    ['7: 1 to 4'],
  ],
  [
    'what was taken back, and said before dates were kept, has no beginning',
    { changes: [withdrawn(7, 4)], firstRun: null },
    ['7:  to 4'],
  ],
  [
    'each terms have their own',
    { now: [7, 8], changes: [said(8, 4), withdrawn(9, 4)] },
    ['7: 1 to ', '8: 4 to ', '9: 1 to 4'],
  ],
])('%s', (_title, given, expected) => check(given, expected))

test('a day counts as it ended: what was said on it is said, what was taken back on it is not', () => {
  const periods = datePeriods({
    termsIds: new Set([8]),
    changes: [withdrawn(7, 4), said(8, 4)],
    firstRun: runOf(2),
  })
  const onDay = (day: string) => [...termsOnDay(periods, day)].sort()
  expect(['2026-11-01', '2026-11-02', '2026-11-03', '2026-11-04', '2027-01-01'].map(onDay)).toEqual([
    [],
    [7],
    [7],
    [8],
    [8],
  ])
})

test('what was said before dates were kept was said on any day', () => {
  const periods = datePeriods({ termsIds: new Set([7]), changes: [], firstRun: null })
  expect([...termsOnDay(periods, '2000-01-01')]).toEqual([7])
})

test('the verdict of a day rests on what was said that day', () => {
  const dossier = aDossier({ statements: [aStatement(1), aStatement(2, { part: 1, says: 'excludes' })] })
  const readings = asReadings({})
  const model = aModel('WX12', { terms: [1, 2] })
  const periods = datePeriods({ termsIds: model.termsIds, changes: [said(2, 9)], firstRun: runOf(4) })
  const verdictOn = (day: string) => decideOnDay({ dossier, model, periods, readings }, day).verdict
  expect(['2026-11-03', '2026-11-04', '2026-11-08', '2026-11-09'].map(verdictOn)).toEqual([
    'no-record',
    'fits',
    'fits',
    'does-not-fit',
  ])
})

/** Runs in order of days, each saying or taking back as the state before allows. */
const story = fc.array(
  fc.record({ day: fc.integer({ min: 2, max: 28 }), termsId: fc.integer({ min: 1, max: 4 }) }),
)

test('after the last change, what is said is what is said now; and a day before any of it, nothing', () => {
  fc.assert(
    fc.property(story, fc.uniqueArray(fc.integer({ min: 1, max: 4 })), (steps, atFirst) => {
      const now = new Set(atFirst)
      const seen = new Set<string>()
      const changes: FitmentChange[] = []
      for (const { day, termsId } of [...steps].sort((one, other) => one.day - other.day)) {
        const change = now.has(termsId) ? withdrawn(termsId, day) : said(termsId, day)
        // A run says or takes back each terms once.
        if (seen.has(`${termsId} ${day}`)) continue
        seen.add(`${termsId} ${day}`)
        changes.push(change)
        if (change.change === 'said') now.add(termsId)
        else now.delete(termsId)
      }
      const periods = datePeriods({ termsIds: now, changes, firstRun: runOf(1) })
      expect(termsOnDay(periods, '2026-11-30')).toEqual(now)
      expect(termsOnDay(periods, '2026-10-31')).toEqual(new Set())
      const model = aModel('WX12', { terms: [...now] })
      const dossier = aDossier({ statements: [1, 2, 3, 4].map(id => aStatement(id, { part: 1 })) })
      const readings = asReadings({})
      expect(decideOnDay({ dossier, model, periods, readings }, '2026-11-30')).toEqual(
        decideFit(dossier, [model], readings),
      )
    }),
  )
})
