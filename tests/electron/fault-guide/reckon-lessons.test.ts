import { expect, test } from 'vitest'
import type { ShopJob } from '../../../electron/fault-guide/fault-shop.ts'
import type { KeptProposal } from '../../../electron/fault-guide/judge-proposal.ts'
import { reckonLessons } from '../../../electron/fault-guide/reckon-lessons.ts'

const symptoms = [
  { applianceType: 'washer', symptom: 'does not drain', alsoSaid: ['water left in it'] },
  { applianceType: 'washer', symptom: 'does not heat', alsoSaid: [] },
  { applianceType: 'dryer', symptom: 'does not heat', alsoSaid: [] },
]
let number = 0
const job = (over: Partial<ShopJob>): ShopJob => ({
  job: `J${++number}`,
  platform: null,
  applianceType: 'washer',
  symptom: 'does not drain',
  causeKey: null,
  cause: null,
  familiesNeeded: [],
  familiesFitted: [],
  finishedFirstVisit: true,
  ...over,
})

test('wrong orders, second visits and right proposals are counted by symptom, the worst first', () => {
  const [inVain, right] = [
    job({ familiesNeeded: ['board'], familiesFitted: ['drain-pump'], finishedFirstVisit: false }),
    job({ symptom: 'Water left in it', familiesNeeded: ['drain-pump'], familiesFitted: ['drain-pump'] }),
  ]
  const jobs = [
    job({ symptom: 'does not heat', familiesNeeded: ['heater'], familiesFitted: ['heater'] }),
    inVain,
    right,
  ]
  const pump: KeptProposal = { endsIn: 'part', causes: ['pump worn'], families: ['drain-pump'] }
  const board: KeptProposal = { endsIn: 'part', causes: ['board dead'], families: ['board'] }
  const { lessons, notInGuide } = reckonLessons(
    symptoms,
    jobs,
    new Map([
      [inVain.job, board],
      [right.job, pump],
    ]),
  )
  expect(lessons).toEqual([
    {
      ...{ applianceType: 'washer', symptom: 'does not drain', jobs: 2, secondVisits: 1 },
      ...{ told: 2, wrongOrders: 1, proposals: 2, firstRight: 1 },
    },
    {
      ...{ applianceType: 'washer', symptom: 'does not heat', jobs: 1, secondVisits: 0 },
      ...{ told: 1, wrongOrders: 0, proposals: 0, firstRight: 0 },
    },
  ])
  expect(notInGuide).toBe(0)
})

test('a job under other words, or of another kind of appliance, is counted as not in the guide', () => {
  const { lessons, notInGuide } = reckonLessons(
    symptoms,
    [job({ symptom: 'smells of fish' }), job({ applianceType: 'oven', symptom: 'does not heat' })],
    new Map(),
  )
  expect({ lessons, notInGuide }).toEqual({ lessons: [], notInGuide: 2 })
})

test('a job of which it is not known what was fitted is no wrong order', () => {
  const { lessons } = reckonLessons(symptoms, [job({ familiesNeeded: ['board'] })], new Map())
  expect(lessons[0]).toMatchObject({ jobs: 1, told: 0, wrongOrders: 0 })
})
