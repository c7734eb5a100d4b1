import { expect, test } from 'vitest'
import { decideFit } from '../../../electron/fit-check/decide-fit.ts'
import { asReadings } from '../../../electron/fit-check/read-question.ts'
import { aDossier, aModel, aStatement } from '../../builders/fit-dossier.ts'

/**
 * Six characters and one more decide whether a model is listed. Each of the six stands in the number as itself and
 * turned, so neither is needed; and before and behind them in two characters that tell it only together. To try every
 * set would take too long.
 */
test('of sets too many to try, the characters that tell most by themselves are asked for, the first of equals', () => {
  const bit = (number: number, at: number) => (number >> at) & 1
  const models = Array.from({ length: 1024 }, (_, id) => {
    const deciding = [0, 1, 2, 3, 4, 5].map(at => bit(id, at))
    const pairs = deciding.map((one, at) => {
      const chance = bit(id, 6 + (at % 3))
      return `${chance}${chance ^ one}`
    })
    const [needed, number] = [bit(id, 9), id & 63]
    const turned = deciding.map(one => 1 - one)
    const key = [needed, ...pairs.slice(0, 3), ...deciding, ...turned, ...pairs.slice(3)].join('')
    return aModel(key, { modelId: id + 1, terms: Number(number < 37) !== needed ? [1] : [] })
  })
  const { ask, askChosen } = decideFit(aDossier({ statements: [aStatement(1)] }), models, asReadings({}))
  expect(askChosen).toBe('greedy')
  expect(ask.map(({ reading }) => reading)).toEqual(['model-number'])
  expect(ask[0]?.positions).toEqual([1, 8, 9, 10, 11, 12, 13])
})
