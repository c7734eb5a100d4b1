import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { findElectronBinary } from '../../../electron/start/electron-binary.ts'

let folder: string
beforeEach(() => {
  folder = mkdtempSync(path.join(os.tmpdir(), 'tallyplate-binary-'))
})
afterEach(() => rmSync(folder, { recursive: true }))

/** A checkout whose Electron has these files. */
function check(given: Record<string, string>, expected: string | undefined): void {
  for (const [name, text] of Object.entries(given)) {
    const file = path.join(folder, 'node_modules/electron', name)
    mkdirSync(path.dirname(file), { recursive: true })
    writeFileSync(file, text)
  }
  const found = findElectronBinary(folder, {})
  expect(found).toBe(expected && path.join(folder, 'node_modules/electron', expected))
}

const whole = {
  'package.json': '{"version":"45.4.1"}',
  'path.txt': 'electron',
  'dist/version': 'v45.4.1',
  'dist/electron': '',
}

test('a whole Electron of the version wanted is found', () => check(whole, 'dist/electron'))

test('an installation without the program, as npm leaves it, is none', () =>
  check({ 'package.json': whole['package.json'] }, undefined))

test('an older program left behind is none', () => check({ ...whole, 'dist/version': 'v44.0.0' }, undefined))

test('no package at all is none', () => check({}, undefined))
