import { describe, expect, test } from 'vitest'
import { decideFit } from '../../../electron/fit-check/decide-fit.ts'
import { listInstead } from '../../../electron/fit-check/list-instead.ts'
import { asReadings } from '../../../electron/fit-check/read-question.ts'
import { aDossier, aModel, aPart, aReplacement, aStatement } from '../../builders/fit-dossier.ts'
import { generateQuestion } from './soundness/generate-questions.ts'

const nothingRead = { made: null, serial: null, stated: new Map<string, string>() }

describe('a part is suggested only where a whole decision says that it fits', () => {
  test('over generated catalogues, no more and no fewer', () => {
    const counted = { suggested: 0, not: 0 }
    for (let seed = 1; seed <= 1500; seed++) {
      const { dossier, models, plate } = generateQuestion(seed)
      const readings = asReadings(plate)
      const { verdict, current } = decideFit(dossier, models, readings)
      const isProved = verdict === 'fits' && current === dossier.asked.partId
      expect(listInstead([dossier], models, readings), `seed ${seed}`).toEqual(
        isProved ? [dossier.asked.partNumber] : [],
      )
      counted[isProved ? 'suggested' : 'not']++
    }
    expect(counted.suggested).toBeGreaterThan(100)
    expect(counted.not).toBeGreaterThan(100)
  })

  test('a superseded number is not suggested, its successor is', () => {
    const parts = [aPart(1), aPart(2)]
    const said = { parts, replacements: [aReplacement(1, 2)], statements: [aStatement(1, { part: 1 })] }
    const [old, successor] = parts.map(asked => ({ ...aDossier(said), asked }))
    const models = [aModel('WX1', { terms: [1] })]
    expect(
      listInstead(
        [old, successor].flatMap(one => one ?? []),
        models,
        nothingRead,
      ),
    ).toEqual(['P2'])
  })

  test('five at most, in the order given', () => {
    const dossiers = [7, 6, 5, 4, 3, 2].map(id =>
      aDossier({ parts: [aPart(id)], statements: [aStatement(1)] }),
    )
    const models = [aModel('WX1', { terms: [1] })]
    expect(listInstead(dossiers, models, nothingRead)).toEqual(['P7', 'P6', 'P5', 'P4', 'P3'])
  })
})
