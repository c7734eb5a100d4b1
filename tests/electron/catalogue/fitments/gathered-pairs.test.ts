import fc from 'fast-check'
import { expect, test } from 'vitest'
import { GatheredPairs, onceEach } from '../../../../electron/catalogue/fitments/gathered-pairs.ts'

const pairs = fc.array(
  fc.record({ group: fc.nat(5), models: fc.array(fc.nat(900), { minLength: 1, maxLength: 40 }) }),
)

test('gives each pair back at its place, and all of a group together', () => {
  fc.assert(
    fc.property(pairs, runs => {
      const gathered = new GatheredPairs()
      const all = runs.flatMap(({ group, models }) => models.map(model => ({ group, model })))
      expect(all.map(({ group, model }) => gathered.add(model, group))).toEqual(all.map((_, at) => at))
      expect(gathered.size).toBe(all.length)
      expect(all.map((_, at) => ({ group: gathered.groupAt(at), model: gathered.modelAt(at) }))).toEqual(all)
      const inRuns = [...gathered.runs()].flatMap(({ group, from, to }) =>
        Array.from({ length: to - from }, (_, at) => ({ group, model: gathered.modelAt(from + at) })),
      )
      expect(inRuns).toEqual(all)
      const groups = [...new Set(all.map(({ group }) => group))].sort()
      const said = groups.map(group => {
        const ofGroup = all.filter(pair => pair.group === group).map(({ model }) => model)
        return [group, [...new Set(ofGroup)].sort((one, other) => one - other)]
      })
      expect(gathered.asSaid().map(({ termsId, said: models }) => [termsId, [...models]])).toEqual(said)
      expect(gathered.asWithdrawn().map(({ termsId, withdrawn }) => [termsId, [...withdrawn]])).toEqual(said)
      gathered.clear()
      expect(gathered.size).toBe(0)
      expect([...gathered.runs()]).toEqual([])
    }),
  )
})

test('holds more pairs than one block, in runs of a few thousand', () => {
  const gathered = new GatheredPairs()
  for (let at = 0; at < 150_000; at += 1) gathered.add(at * 3, at < 100_000 ? 1 : at)
  expect([99_999, 100_000, 149_999].map(at => [gathered.modelAt(at), gathered.groupAt(at)])).toEqual([
    [299_997, 1],
    [300_000, 100_000],
    [449_997, 149_999],
  ])
  expect(Math.max(...[...gathered.runs()].map(({ from, to }) => to - from))).toBeLessThanOrEqual(4096)
})

test('what stands in order already is left where it is', () => {
  const ids = Uint32Array.of(1, 4, 9)
  expect(onceEach(ids)).toBe(ids)
  expect([...onceEach(Uint32Array.of(9, 1, 4, 4, 1))]).toEqual([1, 4, 9])
})
