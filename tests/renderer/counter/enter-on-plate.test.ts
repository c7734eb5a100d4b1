import { expect, test } from 'vitest'
import { decideEnter } from '../../../renderer/counter/enter-on-plate.ts'
import { makeCandidate } from '../../builders/model-candidate.ts'

const best = makeCandidate('ODW4530/01')
const other = makeCandidate('ODW4530/02')
const untouched = { pointedAt: null, isConfirming: false, taken: null }
const found = (outcome: 'exact' | 'near' | 'several') => ({ outcome, candidates: [best, other] })

test('Enter on an exact number goes on to what fits', () => {
  expect(decideEnter(found('exact'), untouched)).toEqual({ do: 'go-to-card' })
})

test.each(['near', 'several'] as const)('a %s model is only pointed at by the first Enter', outcome => {
  expect(decideEnter(found(outcome), untouched)).toEqual({ do: 'point-at', model: best, isConfirming: true })
})

test('a second Enter takes the one that was pointed at', () => {
  const pointed = { ...untouched, pointedAt: other, isConfirming: true }
  expect(decideEnter(found('several'), pointed)).toEqual({ do: 'take', model: other })
})

test('a model reached by the arrows still needs its two Enters', () => {
  const pointed = { ...untouched, pointedAt: other }
  expect(decideEnter(found('several'), pointed)).toMatchObject({ do: 'point-at', model: other })
})

test('an arrow away from an exact number is doubtful again', () => {
  const pointed = { ...untouched, pointedAt: other }
  expect(decideEnter(found('exact'), pointed)).toMatchObject({ do: 'point-at', model: other })
})

test('after a model was taken Enter goes on to what fits', () => {
  expect(decideEnter(found('several'), { ...untouched, taken: other })).toEqual({ do: 'go-to-card' })
})

test('without a model Enter does nothing', () => {
  expect(decideEnter(undefined, untouched)).toEqual({ do: 'nothing' })
  expect(decideEnter({ outcome: 'none', candidates: [] }, untouched)).toEqual({ do: 'nothing' })
})
