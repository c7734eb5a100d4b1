import fc from 'fast-check'
import { expect, test } from 'vitest'
import { ownText } from '../../../electron/catalogue/loading/own-text.ts'

test('is the same text, whatever it holds', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary' }), text => {
      expect(ownText(text)).toBe(text)
    }),
  )
  expect(ownText('\ud800')).toBe('\ud800')
})
