import { expect, test } from 'vitest'
import { cautionCheck } from '../../../electron/fault-guide/caution-check.ts'
import type { Competence } from '../../../shared-schemas/fault-guide.ts'

function check(hazards: readonly string[], competence: Competence, expected: readonly RegExp[]): void {
  const cautions = cautionCheck({ hazards, competence })
  expect(cautions).toHaveLength(expected.length)
  for (const [at, words] of expected.entries()) expect(cautions[at]?.text).toMatch(words)
}

test('a check on a dead machine says how it is made dead, and that the earth is tested afterwards', () => {
  check(['water', 'mains'], 'repairer', [
    /^Isolate .* prove it dead.* Restore earth continuity and test it/,
    /^Turn the water off/,
  ])
})

test('a check on live parts says whose work it is, and does not say to prove it dead first and measure then', () => {
  check(['mains', 'hot'], 'live-testing', [
    /^Leave this to a person trained and equipped .* local codes decide/,
    /^Let it cool/,
  ])
})

test('a check without a hazard has no caution', () => {
  check([], 'anyone', [])
})
