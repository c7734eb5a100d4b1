import { expect, test } from 'vitest'
import { judgeProposal, type KeptProposal } from '../../../electron/fault-guide/judge-proposal.ts'

const part: KeptProposal = {
  endsIn: 'part',
  causes: ['pump worn'],
  families: ['drain-pump', 'pump-with-cover'],
}
const noPart: KeptProposal = { endsIn: 'no-part', causes: ['filter blocked'], families: [] }
const licensed: KeptProposal = { endsIn: 'licensed', causes: ['supply faulty'], families: [] }

test.each<[string, KeptProposal, Parameters<typeof judgeProposal>[1], boolean | null]>([
  [
    'a part is right where one of its families went in',
    part,
    { causeKey: null, cause: null, familiesFitted: ['drain-pump'] },
    true,
  ],
  [
    'a part is wrong where another went in',
    part,
    { causeKey: null, cause: null, familiesFitted: ['lamp'] },
    false,
  ],
  [
    'a part is right where nothing tells but the cause',
    part,
    { causeKey: 'pump worn', cause: null, familiesFitted: [] },
    true,
  ],
  [
    'a part is wrong where the cause was another',
    part,
    { causeKey: 'filter blocked', cause: null, familiesFitted: [] },
    false,
  ],
  [
    'no part is wrong where one went in',
    noPart,
    { causeKey: null, cause: null, familiesFitted: ['drain-pump'] },
    false,
  ],
  [
    'no part is right where the cause is named',
    noPart,
    { causeKey: 'filter blocked', cause: null, familiesFitted: [] },
    true,
  ],
  [
    'a job that tells nothing judges nothing',
    noPart,
    { causeKey: null, cause: null, familiesFitted: [] },
    null,
  ],
  [
    'licensed work is not judged',
    licensed,
    { causeKey: 'supply faulty', cause: null, familiesFitted: [] },
    null,
  ],
])('%s', (_, proposal, job, expected) => {
  expect(judgeProposal(proposal, job)).toBe(expected)
})
