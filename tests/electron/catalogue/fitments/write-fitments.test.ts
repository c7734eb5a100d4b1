import fc from 'fast-check'
import { expect, test } from 'vitest'
import { readChangesOfModel } from '../../../../electron/catalogue/fitments/fitment-change-queries.ts'
import {
  countFitments,
  isSaid,
  listModelsOfAnyTerms,
  listModelsOfTerms,
  listTermsOfModel,
  readTermsByModel,
} from '../../../../electron/catalogue/fitments/fitment-queries.ts'
import { finishAtOnce } from '../../../../electron/catalogue/fitments/take-breaths.ts'
import { type TermsChange, writeFitments } from '../../../../electron/catalogue/fitments/write-fitments.ts'
import { type DatabaseHandle, inTransaction } from '../../../../electron/database/handles.ts'
import { openShopOfIds } from '../../../builders/open-shop-of-ids.ts'

const modelIds = Array.from({ length: 2_500 }, (_, at) => 1 + at * (at % 7 === 0 ? 300 : 3))
modelIds.sort((one, other) => one - other)
const all = [...new Set(modelIds)]
const termsIds = [1, 2, 3, 200, 70_000]

/** Stretches of models, so that lists grow over several pieces, shrink and split. */
const change = fc.record({
  termsId: fc.constantFrom(...termsIds),
  from: fc.nat(all.length),
  many: fc.oneof(fc.nat(5), fc.nat(all.length)),
  step: fc.integer({ min: 1, max: 3 }),
  says: fc.boolean(),
})

interface Step {
  readonly termsId: number
  readonly from: number
  readonly many: number
  readonly step: number
  readonly says: boolean
}

function asChange({ termsId, from, many, step, says }: Step): TermsChange {
  const models = Uint32Array.from(all.slice(from, from + many).filter((_, at) => at % step === 0))
  const none = new Uint32Array()
  return { termsId, said: says ? models : none, withdrawn: says ? none : models }
}

function write(database: DatabaseHandle, changes: readonly TermsChange[], run: number | null) {
  return inTransaction(database, writable => finishAtOnce(writeFitments(writable, changes, run)))
}

test('both directions say what was said and not withdrawn, and each change is kept with its run', () => {
  fc.assert(
    fc.property(fc.array(change, { minLength: 1, maxLength: 8 }), steps => {
      const database = openShopOfIds({ modelIds: all, termsIds, runs: steps.length + 1 })
      const expected = new Map(termsIds.map(id => [id, new Set<number>()]))
      for (const [at, step] of steps.entries()) {
        const [written] = write(database, [asChange(step)], at + 1)
        const models = expected.get(step.termsId) as Set<number>
        const asked = asChange(step)
        expect([...(written?.said ?? [])]).toEqual([...asked.said].filter(id => !models.has(id)))
        expect([...(written?.withdrawn ?? [])]).toEqual([...asked.withdrawn].filter(id => models.has(id)))
        for (const id of asked.said) models.add(id)
        for (const id of asked.withdrawn) models.delete(id)
        const first = written?.said[0] ?? written?.withdrawn[0]
        if (first !== undefined)
          expect(readChangesOfModel(database, first)).toContainEqual({
            loadRunId: at + 1,
            change: step.says ? 'said' : 'withdrawn',
            termsIds: [step.termsId],
          })
      }
      const said = [...expected].map(([id, models]) => [id, [...models].sort((one, other) => one - other)])
      expect(termsIds.map(id => [id, [...listModelsOfTerms(database, id)]])).toEqual(said)
      const ofModels = new Map(all.map(id => [id, termsIds.filter(terms => expected.get(terms)?.has(id))]))
      const read = new Map(readTermsByModel(database, all))
      expect(all.map(id => [id, read.get(id) ?? []])).toEqual([...ofModels])
      expect(countFitments(database)).toBe([...expected.values()].reduce((sum, { size }) => sum + size, 0))
      const one = all[17] as number
      expect(listTermsOfModel(database, one)).toEqual(ofModels.get(one))
      for (const id of termsIds) expect(isSaid(database, one, id)).toBe(expected.get(id)?.has(one))
      const any = new Set(said.slice(0, 2).flatMap(([, models]) => models as number[]))
      expect(listModelsOfAnyTerms(database, termsIds.slice(0, 2))).toEqual(
        [...any].sort((before, after) => before - after),
      )
      database.close()
    }),
    { numRuns: 60 },
  )
}, 60_000)

test('a piece stands whole on its page: no row of the models of terms is longer than a thousand bytes', () => {
  const database = openShopOfIds({ modelIds: all, termsIds, runs: 1 })
  write(database, [{ termsId: 1, said: Uint32Array.from(all), withdrawn: new Uint32Array() }], null)
  const rows = [
    ...database.tuples<[number, number]>('SELECT length(more_models), models FROM fitment_by_terms'),
  ]
  expect(rows.length).toBeGreaterThan(2)
  expect(Math.max(...rows.map(([bytes]) => bytes))).toBeLessThanOrEqual(1000 - 30)
  database.close()
})

test('in one run what came and what went of a model are both kept', () => {
  const database = openShopOfIds({ modelIds: [1], termsIds: [1, 2], runs: 1 })
  const one = Uint32Array.of(1)
  const none = new Uint32Array()
  write(database, [{ termsId: 1, said: one, withdrawn: none }], 1)
  write(
    database,
    [
      { termsId: 1, said: none, withdrawn: one },
      { termsId: 2, said: one, withdrawn: none },
    ],
    1,
  )
  expect(readChangesOfModel(database, 1)).toEqual([
    { loadRunId: 1, change: 'said', termsIds: [1, 2] },
    { loadRunId: 1, change: 'withdrawn', termsIds: [1] },
  ])
  database.close()
})
