import { describe, expect, test } from 'vitest'
import { readAnswers } from '../../../electron/fault-guide/read-answers.ts'
import { learnPrior } from '../../../electron/fault-guide/reasoning/learn-prior.ts'
import { weighFaults } from '../../../electron/fault-guide/weigh-faults.ts'
import type { CheckAnswer } from '../../../shared-schemas/fault-finding.ts'
import { guideOfDrain } from './guide-of-drain.ts'

const learnt = learnPrior(
  guideOfDrain.causes.map(({ cause, weight, families }) => ({
    cause,
    weight,
    families: families.map(({ family }) => family),
  })),
  [],
  null,
)

/** The meter's figure is taken for good between 150 and 200. */
const read = (answers: readonly CheckAnswer[]) =>
  readAnswers(guideOfDrain.checks, answers, (_, typed) => {
    const ohms = Number.parseFloat(typed)
    if (Number.isNaN(ohms))
      return { ok: false, problem: { code: 'malformed', request: '', where: '', why: typed } }
    const isGood = ohms >= 150 && ohms <= 200
    return { ok: true, value: { outcome: isGood ? 'within' : 'outside', why: '150 to 200 Ω' } }
  })

function weigh(answers: readonly CheckAnswer[]) {
  const settled = read(answers)
  if (!settled.ok) throw new Error(settled.problem.code)
  return weighFaults(guideOfDrain, learnt, settled.value, ({ expected }) => expected)
}

/** `remedy` and `answer` are the first of theirs. */
function check(answers: readonly CheckAnswer[], expected: object): void {
  const weighed = weigh(answers)
  expect({ ...weighed, remedy: weighed.remedies[0], answer: weighed.answers[0] }).toMatchObject(expected)
}

describe('a fault that is looked for', () => {
  test('begins with the check that tells most in a minute, and the causes as the guide weighs them', () => {
    check([], { end: 'not-yet', settledOn: 0 })
    expect(weigh([]).causes.map(({ cause, probability }) => `${cause} ${probability.toFixed(2)}`)).toEqual([
      'filter blocked 0.50',
      'pump burnt 0.20',
      'pump worn 0.20',
      'supply faulty 0.10',
    ])
    expect(weigh([]).checks[0]?.check).toBe('sound of the pump')
  })

  test('ends without a part where the filter is full', () => {
    const full = [
      { check: 'filter', outcome: 'full' },
      { check: 'sound of the pump', outcome: 'runs' },
    ]
    check(full, {
      end: 'settled',
      settledOn: 1,
      remedy: { endsIn: 'no-part', causes: ['filter blocked'] },
    })
    expect(weigh(full).remedies[0]?.advice).toEqual(['Empty and clean the filter.'])
  })

  test('ends with one part for two ways in which it fails, and what to test first for the likelier of them', () => {
    const burnt = [
      { check: 'filter', outcome: 'clean' },
      { check: 'sound of the pump', outcome: 'silent' },
      { check: 'coil of the pump', measured: '2000 Ω' },
    ]
    check(burnt, {
      end: 'settled',
      settledOn: 1,
      remedy: {
        endsIn: 'part',
        causes: ['pump burnt', 'pump worn'],
        families: [{ family: 'drain-pump' }],
        advice: ['Measure its coil.', 'Turn the wheel by hand: it should catch, not spin.'],
      },
    })
    expect(weigh(burnt).answers[2]).toMatchObject({ outcome: 'outside', measured: { typed: '2000 Ω' } })
  })

  test('gives no advice and no steps for licensed work', () => {
    const { remedies, checks } = weigh([
      { check: 'filter', outcome: 'clean' },
      { check: 'sound of the pump', outcome: 'silent' },
      { check: 'coil of the pump', measured: '170 Ω' },
    ])
    expect(remedies[0]).toMatchObject({
      endsIn: 'licensed',
      licensedFor: 'fixed-wiring',
      advice: [],
      families: [],
    })
    expect(checks).toEqual([])
  })

  test('says of a reading that contradicts the rest that it does', () => {
    const { answers } = weigh([
      { check: 'sound of the pump', outcome: 'runs' },
      { check: 'filter', outcome: 'full' },
      { check: 'coil of the pump', measured: '0 Ω' },
    ])
    expect(answers.map(({ oddAtBest }) => oddAtBest !== null)).toEqual([false, false, true])
  })

  test('names the precautions and what they add to the minutes', () => {
    const coil = weigh([]).checks.find(({ check: name }) => name === 'coil of the pump')
    expect(coil).toMatchObject({
      minutes: 8,
      effort: 13,
      added: [
        { why: 'mains', minutes: 3 },
        { why: 'repairer', minutes: 2 },
      ],
      cautions: [{ code: 'mains' }],
    })
  })
})

test('the figures of a cause give its probability when they are reckoned again', () => {
  const { causes } = weigh([
    { check: 'filter', outcome: 'clean' },
    { check: 'sound of the pump', left: 'could-not-tell' },
    { check: 'coil of the pump', measured: '170' },
  ])
  for (const { probability, arithmetic } of causes) {
    const product = arithmetic.factors.reduce((all, { likelihood }) => all * likelihood, arithmetic.prior)
    expect(product / arithmetic.total).toBeCloseTo(probability, 12)
    expect(arithmetic.factors.map(factor => factor.check)).toEqual(['filter', 'coil of the pump'])
  }
})

describe('an answer', () => {
  test('given anew takes the place of the one before', () => {
    check(
      [
        { check: 'filter', outcome: 'full' },
        { check: 'filter', outcome: 'clean' },
      ],
      {
        answer: { outcome: 'clean' },
      },
    )
  })

  test.each([
    ['to a check that the guide does not have', { check: 'belt', outcome: 'broken' }, 'check-not-in-guide'],
    ['that its check does not have', { check: 'filter', outcome: 'gone' }, 'outcome-not-of-check'],
    ['that cannot be read', { check: 'coil of the pump', measured: 'lots' }, 'malformed'],
  ])('%s is refused', (_, answer, code) => {
    expect(read([answer])).toMatchObject({ ok: false, problem: { code } })
  })
})
