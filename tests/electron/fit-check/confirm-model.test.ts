import { describe, expect, test } from 'vitest'
import { confirmModel, differingPositions } from '../../../electron/fit-check/confirm-model.ts'
import { decideFit } from '../../../electron/fit-check/decide-fit.ts'
import { asReadings } from '../../../electron/fit-check/read-question.ts'
import type { OpenModels } from '../../../electron/model-lookup/open-models.ts'
import type { ModelId } from '../../../shared-schemas/identifiers.ts'
import { aDossier, aModel, aStatement } from '../../builders/fit-dossier.ts'

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
})
