import { expect, test } from 'vitest'
import { wordIntegrityFault } from '../../../electron/database/word-integrity-fault.ts'

// The shapes are what PRAGMA integrity_check of SQLite 3 prints: https://sqlite.org/pragma.html#pragma_integrity_check
test('a sound file has no fault', () => expect(wordIntegrityFault('ok')).toBeUndefined())

test('a fault is told on one line', () => {
  const checked =
    '*** in database main ***\nTree 9 page 9: btreeInitPage() returns error code 11\n  Page 12: never used'
  expect(wordIntegrityFault(checked)).toBe(
    'Tree 9 page 9: btreeInitPage() returns error code 11; Page 12: never used',
  )
})
