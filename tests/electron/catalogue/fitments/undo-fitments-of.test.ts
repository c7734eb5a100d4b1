import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { FitmentWriter } from '../../../../electron/catalogue/fitment-writer.ts'
import { finishAtOnce } from '../../../../electron/catalogue/fitments/take-breaths.ts'
import { undoFitmentsOf } from '../../../../electron/catalogue/fitments/undo-fitments-of.ts'
import { appendLoadRun } from '../../../../electron/catalogue/load-run-queries.ts'
import { type DatabaseHandle, inTransaction } from '../../../../electron/database/handles.ts'
import { openShopOfIds } from '../../../builders/open-shop-of-ids.ts'
import { unpackFitments } from '../../../builders/unpack-fitments.ts'

const models = Array.from({ length: 900 }, (_, at) => at + 1)
const terms = [1, 2, 3]

interface Said {
  readonly termsId: number
  readonly from: number
  readonly to: number
  readonly says: boolean
}

/** One run that says and withdraws, as a load does; gives its number. */
function runOf(database: DatabaseHandle, changes: readonly Said[]): number {
  return inTransaction(database, writable => {
    const fitments = new FitmentWriter(writable)
    for (const { termsId, from, to, says } of changes) {
      const some = Uint32Array.from(models.slice(from, to))
      const none = new Uint32Array()
      finishAtOnce(fitments.write([{ termsId, said: says ? some : none, withdrawn: says ? none : some }]))
    }
    appendLoadRun(writable, fitments, { ...counts, path: '/lists', correctionReason: null })
    return fitments.loadRunId
  })
}

const counts = { at: new Date('2026-11-23'), added: 0, changed: 0, unchanged: 0, rejected: 0 }

function undo(database: DatabaseHandle, loadRunId: number): number {
  return inTransaction(database, writable => {
    const fitments = new FitmentWriter(writable)
    finishAtOnce(undoFitmentsOf(writable, fitments, loadRunId))
    appendLoadRun(writable, fitments, { ...counts, path: null, correctionReason: 'the wrong list' })
    writable.run(
      `INSERT INTO load_account (load_run_id, initials, device, first_change, last_change, undoes)
       VALUES (?, 'AB', 'test-counter', 1, 0, ?)`,
      ...[fitments.loadRunId, loadRunId],
    )
    return fitments.loadRunId
  })
}

function saidIn(database: DatabaseHandle): string[] {
  unpackFitments(database)
  return [
    ...database.tuples<[string]>("SELECT model_id || ' ' || terms_id AS pair FROM said ORDER BY pair"),
  ].map(([pair]) => pair)
}

const said = fc.record({
  termsId: fc.constantFrom(...terms),
  from: fc.nat(models.length),
  to: fc.nat(models.length),
  says: fc.boolean(),
})
const run = fc.array(said, { minLength: 1, maxLength: 4 })

test('after the last runs are undone, the latest first, fitments are as they were before each', () => {
  fc.assert(
    fc.property(fc.array(run, { minLength: 1, maxLength: 4 }), runs => {
      const database = openShopOfIds({ modelIds: models, termsIds: terms, runs: 0 })
      const before: string[][] = []
      const numbers = runs.map(changes => {
        before.push(saidIn(database))
        return runOf(database, changes)
      })
      for (const number of numbers.reverse()) {
        undo(database, number)
        expect(saidIn(database)).toEqual(before.pop())
      }
      database.close()
    }),
    { numRuns: 60 },
  )
}, 60_000)

describe('a run that is undone out of turn', () => {
  const check = (runs: readonly Said[][], undone: number, left: readonly string[]) => {
    const database = openShopOfIds({ modelIds: models, termsIds: terms, runs: 0 })
    for (const changes of runs) runOf(database, changes)
    undo(database, undone)
    expect(saidIn(database)).toEqual(left)
    database.close()
  }
  const one = (termsId: number, says = true): Said => ({ termsId, from: 0, to: 1, says })
  const cases: readonly (readonly [string, readonly Said[][], number, readonly string[]])[] = [
    ['the first, with what a later one said left', [[one(1)], [one(2)]], 1, ['1 2']],
    ['the first, of which a later one withdrew something', [[one(1), one(2)], [one(1, false)]], 1, []],
    [
      'the first, of which something was withdrawn and said anew',
      [[one(1)], [one(1, false)], [one(1)]],
      1,
      ['1 1'],
    ],
    ['a later one, with the first left', [[one(1)], [one(2)]], 2, ['1 1']],
    ['a later one that withdrew', [[one(1)], [one(1, false)], [one(2)]], 2, ['1 1', '1 2']],
    ['one that withdrew what the next said again', [[one(1)], [one(1, false)], [one(1)]], 2, ['1 1']],
    [
      'one that said what was withdrawn and said again since',
      [[one(2)], [one(1)], [one(1, false)], [one(1)]],
      2,
      ['1 1', '1 2'],
    ],
    ['one in which it came and went', [[one(2)], [one(1), one(1, false)]], 2, ['1 2']],
  ]
  test.each(cases)('%s', (_title, runs, undone, left) => check(runs, undone, left))
})
