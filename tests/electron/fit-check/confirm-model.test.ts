import { describe, expect, test } from 'vitest'
import { confirmModel, differingPositions } from '../../../electron/fit-check/confirm-model.ts'
import { decideFit } from '../../../electron/fit-check/decide-fit.ts'
import { asReadings } from '../../../electron/fit-check/read-question.ts'
import type { OpenModels } from '../../../electron/model-lookup/open-models.ts'
import type { ModelId } from '../../../shared-schemas/identifiers.ts'
import { aDossier, aModel, aPart, aReplacement, aStatement } from '../../builders/fit-dossier.ts'

describe('the characters to compare lie between where both begin and where both end alike', () => {
  const check = (typed: string, catalogue: string, expected: number[]) =>
    expect(differingPositions(typed, catalogue)).toEqual(expected)
  test.each([
    ['WX12A', 'WX13A', [4]],
    ['WX12A', 'WX123A', [5]],
    ['WX123A', 'WX12A', [5]],
    ['XW12A', 'WX12A', [1, 2]],
    ['WX12', 'WX12A', [5]],
    ['A', 'B', [1]],
    ['WX12', 'WX12', []],
    ['WX12A', 'WX12', []],
    ['', 'WX12', [1, 2, 3, 4]],
    ['WX12', '', []],
    ['WX112', 'WX12', [4]],
    ['WX12', 'WX112', [4]],
    ['WX12', 'WX1112', [4, 5]],
    ['WXAB2', 'WXCD2', [3, 4]],
  ])('%s against %s', check)
})

describe('a number that differs from every model', () => {
  const open = (agreement: OpenModels['agreement']): OpenModels => ({
    typed: 'WX12',
    key: 'WX12',
    outcome: 'near',
    agreement,
    models: [
      { modelId: 1 as ModelId, brand: 'Velmara', modelNumber: 'WX 13', key: 'WX13', applianceType: 'washer' },
    ],
  })
  const fits = decideFit(aDossier({ statements: [aStatement(1)] }), [aModel('WX13')], asReadings({}))

  test('is never a yes: it is asked for first', () => {
    expect(confirmModel(open('differs'), fits)).toMatchObject({
      verdict: 'ask',
      models: { open: 1, yes: 0, no: 0, undecided: 1 },
      ask: [{ reading: 'model-number', positions: [4], means: [{ value: 'WX 13', verdict: 'fits' }] }],
    })
  })

  test.each(['agrees', 'confusable'] as const)('one that %s is judged as it is', agreement => {
    expect(confirmModel(open(agreement), fits)).toMatchObject({ verdict: 'fits', modelReasons: [] })
  })

  /** Near ones by their numbers, with the decision over the part listed for all of them. */
  const nearest = (numbers: string[]) => {
    const models = numbers.map((modelNumber, at) => ({
      modelId: (at + 1) as ModelId,
      brand: 'Velmara',
      modelNumber,
      key: modelNumber.replaceAll(' ', ''),
      applianceType: 'washer',
    }))
    const dossier = aDossier({
      parts: [aPart(1), aPart(2)],
      replacements: [aReplacement(1, 2, { alsoNeeds: ['S1'] })],
      statements: [aStatement(1)],
    })
    const decision = decideFit(
      dossier,
      models.map(({ key }) => aModel(key)),
      asReadings({}),
    )
    expect(decision.verdict).toBe(numbers.length === 0 ? 'no-record' : 'fits-with-changes')
    return confirmModel({ ...open('differs'), models }, decision)
  }

  test('has nothing bought for it, whatever the near ones need', () => {
    expect(nearest(['WX 13'])).toMatchObject({
      alsoNeeds: [],
      askChosen: null,
      ask: [{ means: [{ value: 'WX 13', verdict: 'fits-with-changes' }] }],
    })
  })

  test('is told from the nearest, and the three nearest are named', () => {
    expect(nearest(['WX 13', 'WX 14', 'WX 15', 'WX 16'])).toMatchObject({
      verdict: 'ask',
      models: { open: 4, yes: 0, no: 0, undecided: 4 },
      ask: [
        {
          positions: [4],
          means: ['WX 13', 'WX 14', 'WX 15'].map(value => ({ value, verdict: 'ask' })),
        },
      ],
      modelReasons: [
        {
          code: 'model-not-confirmed',
          text: 'No model is called WX12. Nearest: Velmara WX 13, Velmara WX 14, Velmara WX 15. Confirm the number before anything is ordered.',
          source: null,
        },
      ],
    })
  })

  test('and is near none has no position to compare', () => {
    expect(nearest([])).toMatchObject({ verdict: 'ask', ask: [{ positions: [], means: [] }] })
  })
})
