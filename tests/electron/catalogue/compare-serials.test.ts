import { describe, expect, test } from 'vitest'
import { compareSerials } from '../../../electron/catalogue/compare-serials.ts'

describe('serials have an order within one form, and none across forms', () => {
  const check = (one: string, other: string, expected: number | undefined) => {
    const turned = expected === undefined ? undefined : expected === 0 ? 0 : -expected
    expect([compareSerials(one, other), compareSerials(other, one)]).toEqual([expected, turned])
  }
  test.each([
    ['4000', '4000', 0],
    ['4000', '4001', -1],
    // Figures are numbers, whatever their length; letters count only within one form.
    ['900', '1000', -1],
    ['0004000', '4000', 0],
    ['90071992547409931', '90071992547409932', -1],
    ['A0999', 'A1000', -1],
    ['A1000', 'a1000', 0],
    ['A1000', 'B0001', -1],
    ['1A', '2A', -1],
    ['A1', 'A01', undefined],
    ['A1', '1A', undefined],
    ['10', 'A1', undefined],
    ['A10', '10', undefined],
  ])('%s and %s: %s', check)
})
