import type { GuideOfSymptom } from '../../../electron/fault-guide/guide.ts'
import type { FaultCause, FaultCheck } from '../../../shared-schemas/fault-guide.ts'

const cause = (over: Partial<FaultCause> & Pick<FaultCause, 'cause'>): FaultCause => ({
  endsIn: 'no-part',
  licensedFor: null,
  families: [],
  weight: 1,
  advice: '',
  source: null,
  ...over,
})

const check = (
  over: Partial<FaultCheck> & Pick<FaultCheck, 'check' | 'outcomes' | 'otherwise'>,
): FaultCheck => ({
  how: 'Look.',
  measure: null,
  unit: null,
  expected: null,
  tolerance: null,
  minutes: 2,
  tools: [],
  hazards: [],
  competence: 'anyone',
  source: null,
  byCause: [],
  ...over,
})

const pump = { family: 'drain-pump', name: 'Drain pump', safetyDevice: false }

/** A washer that does not drain: a filter, two ways for the pump to fail, and fixed wiring. */
export const guideOfDrain: GuideOfSymptom = {
  causes: [
    cause({ cause: 'filter blocked', weight: 5, advice: 'Empty and clean the filter.' }),
    cause({
      ...{ cause: 'pump worn', endsIn: 'part', families: [pump], weight: 2 },
      advice: 'Turn the wheel by hand: it should catch, not spin.',
    }),
    cause({
      ...{ cause: 'pump burnt', endsIn: 'part', families: [pump], weight: 2 },
      advice: 'Measure its coil.',
    }),
    cause({ cause: 'supply faulty', endsIn: 'licensed', licensedFor: 'fixed-wiring' }),
  ],
  checks: [
    check({
      ...{ check: 'coil of the pump', how: 'Measure it.', measure: 'resistance', unit: 'Ω' },
      ...{ expected: '150..200 Ω', minutes: 8, hazards: ['mains'], competence: 'repairer', tools: ['meter'] },
      ...{ outcomes: ['within', 'outside'], otherwise: [0.95, 0.05] },
      byCause: [{ cause: 'pump burnt', likelihoods: [0.05, 0.95] }],
    }),
    check({
      ...{ check: 'filter', outcomes: ['clean', 'full'], otherwise: [0.8, 0.2] },
      byCause: [{ cause: 'filter blocked', likelihoods: [0.04, 0.96] }],
    }),
    check({
      ...{ check: 'sound of the pump', outcomes: ['hums', 'silent', 'runs'], otherwise: [0.1, 0.1, 0.8] },
      byCause: [
        { cause: 'pump worn', likelihoods: [0.8, 0.1, 0.1] },
        { cause: 'pump burnt', likelihoods: [0.05, 0.9, 0.05] },
        { cause: 'supply faulty', likelihoods: [0.02, 0.96, 0.02] },
      ],
    }),
  ],
}
