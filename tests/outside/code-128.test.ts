import { expect, test } from 'vitest'
import { code128Check, code128Patterns, encodeCode128 } from '../../shared-schemas/code-128.ts'

// Code 128 by ISO/IEC 15417. The worked example and the rules of its characters are from memory; the table of patterns was
// compared with several published ones.

test('the check character of the usual worked example, PJJ123C in set A, is V, whose value is 54', () => {
  const [startA, ...values] = [103, 48, 42, 42, 17, 18, 19, 35]
  expect(code128Check([startA ?? 0, ...values])).toBe(54)
})

test('each character is eleven modules wide, its bars an even number of them, and no two are alike; the stop is thirteen', () => {
  const characters = code128Patterns.slice(0, 106)
  expect(code128Patterns).toHaveLength(107)
  expect(new Set(code128Patterns).size).toBe(107)
  for (const pattern of characters) {
    const widths = [...pattern].map(Number)
    const sum = (of: readonly number[]) => of.reduce((total, width) => total + width, 0)
    expect([pattern, widths.length, sum(widths)]).toEqual([pattern, 6, 11])
    expect(sum(widths.filter((_, at) => at % 2 === 0)) % 2).toBe(0)
    expect(Math.max(...widths)).toBeLessThanOrEqual(4)
  }
  expect([...(code128Patterns[106] ?? '')].reduce((total, width) => total + Number(width), 0)).toBe(13)
})

/** Reads the bars back, as a scanner does: characters by their widths, then the check. */
function decode(widths: readonly number[]): string | undefined {
  const texts = widths.join('').match(/^((?:\d{6})+)(2331112)$/)
  const values = texts?.[1]?.match(/\d{6}/g)?.map(pattern => code128Patterns.indexOf(pattern)) ?? []
  const [check, data] = [values.at(-1), values.slice(0, -1)]
  const weighed = data.slice(1).reduce((sum, value, at) => sum + value * (at + 1), data[0] ?? 0)
  if (data[0] !== 104 || weighed % 103 !== check) return undefined
  return data
    .slice(1)
    .map(value => String.fromCharCode(value + 32))
    .join('')
}

test.each(['..UNDO', '..L.van-1', '..P.00480121', 'HR/5480', 'a~ Z'])(
  '%s is read back from its bars',
  text => {
    expect(decode(encodeCode128(text) ?? [])).toBe(text)
  },
)

test.each(['', 'Lövane', 'a\u001db'])('%j, which the set cannot say, is no code', text => {
  expect(encodeCode128(text)).toBeUndefined()
})
