import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { FetchMemory } from '../../../electron/start/fetch-memory.ts'

let folder: string
beforeEach(() => {
  folder = mkdtempSync(path.join(os.tmpdir(), 'tallyplate-memory-'))
})
afterEach(() => rmSync(folder, { recursive: true }))

const here = { folder: '/checkout', version: '45.4.1' }

test('a failure is remembered for this installation alone', () => {
  new FetchMemory(folder).noteFailure(here, 'no network')
  const later = new FetchMemory(folder)
  expect(later.readFailure(here)).toBe('no network')
  expect(later.readFailure({ ...here, version: '46.0.0' })).toBeUndefined()
  expect(later.readFailure({ ...here, folder: '/another' })).toBeUndefined()
})

test('a success is forgotten about', () => {
  const memory = new FetchMemory(folder)
  memory.noteFailure(here, 'no network')
  memory.forgetFailure(here)
  expect(memory.readFailure(here)).toBeUndefined()
})

test('a note that cannot be read forbids nothing', () => {
  writeFileSync(path.join(folder, 'electron-fetch.json'), '{half')
  expect(new FetchMemory(folder).readFailure(here)).toBeUndefined()
})
