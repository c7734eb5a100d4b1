import { describe, expect, test } from 'vitest'
import type { Remedy } from '../../shared-schemas/fault-finding.ts'
import { nameRemedy, wordLicensed, wordLikelihood, wordShare } from '../../shared-schemas/word-faults.ts'

test.each([
  [0.004, 'under 1 %', 'all but ruled out'],
  [0.13, '13 %', 'unlikely'],
  [0.3, '30 %', 'possible'],
  [0.5, '50 %', 'likely'],
  [0.9, '90 %', 'very likely'],
  [0.998, 'over 99 %', 'very likely'],
])('a share of %f is never nothing and never certain', (share, figures, word) => {
  expect([wordShare(share), wordLikelihood(share)]).toEqual([figures, word])
})

describe('a remedy is called', () => {
  const remedy: Remedy = {
    ...{ remedy: '', endsIn: 'part', licensedFor: null, probability: 0.9, causes: ['worn'], advice: [] },
    families: ['Drain pump, twist-in', 'Drain pump, bayonet', 'Sump filter'].map(name => ({
      ...{ family: name, name, safetyDevice: false },
    })),
  }

  test('by its families, those that differ only in kind once', () => {
    expect(nameRemedy(remedy)).toBe('Drain pump or Sump filter')
  })

  test('by its cause where no part is needed', () => {
    expect(nameRemedy({ ...remedy, endsIn: 'no-part', families: [] })).toBe('worn')
  })
})

test('licensed work is left to those who are licensed, and nothing else is said of it', () => {
  for (const hazard of ['gas', 'sealed-refrigerant', 'microwave-hv', 'fixed-wiring'] as const)
    expect(wordLicensed(hazard)).toMatch(
      /^This is [\w -]+: only for a person licensed or certified for it where you are; local codes decide\.$/,
    )
})
