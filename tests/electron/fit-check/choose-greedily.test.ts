import { expect, test } from 'vitest'
import { decideFit } from '../../../electron/fit-check/decide-fit.ts'
import { asReadings } from '../../../electron/fit-check/read-question.ts'
import { aDossier, aModel, aStatement } from '../../builders/fit-dossier.ts'

const bit = (number: number, at: number) => (number >> at) & 1

/** The plate positions asked for, where statement 1 is said of some of so many models, numbered from 0. */
function askOver(count: number, modelOf: (id: number) => { key: string; isListed: boolean }) {
  const models = Array.from({ length: count }, (_, id) => {
    const { key, isListed } = modelOf(id)
    return aModel(key, { modelId: id + 1, terms: isListed ? [1] : [] })
  })
  const { ask, askChosen } = decideFit(aDossier({ statements: [aStatement(1)] }), models, asReadings({}))
  expect(ask.map(({ reading }) => reading)).toEqual(['model-number'])
  return { positions: ask[0]?.positions, askChosen }
}

/**
 * Six characters and one more decide whether a model is listed. Before the six stand two for each that tell it only
 * together, behind them the six turned, so none of them is needed; and last a guess that tells more than any by itself,
 * but is wrong for two of the 64, which only all six tell. To try every set would take too long.
 */
test('of sets too many to try, the characters that tell most by themselves are asked for, the first of equals, and none that proved needless', () => {
  const asked = askOver(1024, id => {
    const deciding = [0, 1, 2, 3, 4, 5].map(at => bit(id, at))
    const pairs = deciding.map((one, at) => {
      const chance = bit(id, 6 + (at % 3))
      return `${chance}${chance ^ one}`
    })
    const [needed, number] = [bit(id, 9), id & 63]
    const turned = deciding.map(one => 1 - one)
    const guess = Number(number < 37 !== [36, 39].includes(number))
    return {
      key: [needed, ...pairs, ...deciding, ...turned, guess].join(''),
      isListed: Number(number < 37) !== needed,
    }
  })
  expect(asked).toEqual({ positions: [1, 14, 15, 16, 17, 18, 19], askChosen: 'greedy' })
})

/** C(20, 3) = 1,140 sets of 1,500 models: within the two million comparisons that are tried, and not by much. */
test('every set of three of twenty characters is tried among 1,500 models', () => {
  const asked = askOver(1500, id => {
    const deciding = [0, 1, 2].map(at => bit(id, at))
    const others = Array.from({ length: 14 }, (_, at) => bit(id * 40_503, at + 3))
    return {
      key: [...others, ...deciding, ...deciding.map(one => 1 - one)].join(''),
      isListed: deciding.filter(one => one === 1).length % 2 === 1,
    }
  })
  expect(asked).toEqual({ positions: [15, 16, 17], askChosen: 'fewest' })
})
