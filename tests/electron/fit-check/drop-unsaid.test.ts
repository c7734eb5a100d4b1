import { describe, expect, test } from 'vitest'
import { decideFit } from '../../../electron/fit-check/decide-fit.ts'
import { dropUnsaid } from '../../../electron/fit-check/drop-unsaid.ts'
import { asReadings } from '../../../electron/fit-check/read-question.ts'
import { aDossier, aModel, aStatement } from '../../builders/fit-dossier.ts'
import { generateQuestion } from './soundness/generate-questions.ts'

const models = [aModel('WX1', { terms: [1] }), aModel('WX2', { terms: [1, 2] })]
const nothingRead = { made: null, serial: null, stated: new Map<string, string>() }

describe('what is said of none of the models', () => {
  function check(statements: ReturnType<typeof aStatement>[], kept: number[]) {
    const heard = dropUnsaid(aDossier({ statements }), models)
    expect(heard.statements.map(({ termsId }) => termsId)).toEqual(kept)
  }

  test('is left out, what is said of one of them stays', () => {
    check([aStatement(1), aStatement(2), aStatement(3)], [1, 2])
  })

  test('is left out with its serials, where no serial counts', () => {
    check([aStatement(1), aStatement(3, { serial: { from: '5', to: '9' } })], [1])
  })

  test('stays with its serials beside one that counts', () => {
    const serial = { from: '5', to: '9' }
    check([aStatement(2, { serial }), aStatement(3, { serial }), aStatement(4)], [2, 3])
  })

  test('divides no date that is asked for', () => {
    const statements = [
      aStatement(1, { made: { from: '2014' } }),
      aStatement(3, { made: { from: '2010', to: '2011' } }),
      aStatement(4, { says: 'excludes', made: { from: '2020' } }),
    ]
    const { ask } = decideFit(aDossier({ statements }), models, nothingRead)
    expect(ask).toEqual([
      {
        reading: 'made',
        positions: [],
        means: [
          { value: 'to 2013-12', verdict: 'does-not-fit' },
          { value: '2014-01 on', verdict: 'fits' },
        ],
      },
    ])
  })

  test('changes no decision, over generated catalogues', () => {
    const verdicts = new Map<string, number>()
    for (let seed = 1; seed <= 1500; seed++) {
      const { dossier, models: open, plate } = generateQuestion(seed)
      const ofOthers = dossier.statements.map(said => ({ ...said, termsId: 1000 + said.termsId }))
      const { dossier: another } = generateQuestion(seed + 1500)
      const strange = another.statements
        .filter(({ partId, serial }) => partId === null && serial === null)
        .map(said => ({ ...said, termsId: 2000 + said.termsId }))
      const more = { ...dossier, statements: [...strange, ...dossier.statements, ...ofOthers] }
      const readings = asReadings(plate)
      const decision = decideFit(more, open, readings)
      expect(decision, `seed ${seed}`).toEqual(decideFit(dossier, open, readings))
      verdicts.set(decision.verdict, 1 + (verdicts.get(decision.verdict) ?? 0))
    }
    for (const verdict of ['fits', 'ask', 'does-not-fit', 'no-record'])
      expect(verdicts.get(verdict), verdict).toBeGreaterThan(50)
  })
})
