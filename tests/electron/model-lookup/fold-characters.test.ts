import { describe, expect, test } from 'vitest'
import { createAlphabet, encodeKey, wholeEdit } from '../../../electron/model-lookup/fold-characters.ts'

const alphabet = createAlphabet(['Ж', 'Ф'])

const check = (one: string, other: string, looksAlike: boolean) => {
  const [a = 0, b = 0] = encodeKey(alphabet, one + other)
  const weights = [alphabet.weights[(a << 8) | b], alphabet.weights[(b << 8) | a]]
  expect(weights[0]).toBe(weights[1])
  expect((weights[0] ?? Number.NaN) < wholeEdit).toBe(looksAlike)
  if (looksAlike) expect(alphabet.classOf[a]).toBe(alphabet.classOf[b])
}

describe('characters that worn plates confuse cost less than a wrong character, either way round', () => {
  test.each([
    ...['0O', '0Q', '0D', 'OQ', 'OD', 'QD', '1I', '1L', 'IL', '2Z', '5S', '6G', '8B'],
    ...['ÖO', 'ÉE', 'ÉÈ', 'Ö0', 'АA', 'ΟO'],
  ])('%s', pair => check(pair.charAt(0), pair.charAt(1), true))
})

describe('others are a whole character apart', () => {
  test.each(['AB', '17', '58', 'S8', 'G0', '3B', '2S', 'ЖФ', 'ЖX', 'Ж日'])('%s', pair =>
    check(pair.charAt(0), pair.charAt(1), false),
  )
})
