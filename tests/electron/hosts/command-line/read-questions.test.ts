import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import {
  type QuestionRow,
  readQuestionRows,
  readTexts,
} from '../../../../electron/hosts/command-line/read-questions.ts'
import { Refusal } from '../../../../electron/requests/refusal.ts'

let file: string
beforeAll(() => {
  file = path.join(mkdtempSync(path.join(os.tmpdir(), 'tallyplate-questions-')), 'questions')
})
afterAll(() => rmSync(path.dirname(file), { recursive: true }))

test('a text stands on each line, whatever ends the lines', () => {
  writeFileSync(file, '\uFEFFone\r\ntwo\n\nfour\n')
  expect(readTexts(file)).toEqual(['one', 'two', '', 'four'])
})

const columns = { known: ['brand', 'model', 'part'], needed: ['model', 'part'] }

function check(given: string | Uint8Array, expected: readonly QuestionRow[] | object): void {
  writeFileSync(file, given)
  if (Array.isArray(expected)) expect(readQuestionRows(file, columns)).toEqual(expected)
  else {
    const refusal = catchRefusal(() => readQuestionRows(file, columns))
    expect(refusal.problem).toMatchObject(expected)
  }
}

function catchRefusal(work: () => unknown): Refusal {
  try {
    work()
  } catch (thrown) {
    if (thrown instanceof Refusal) return thrown
    throw thrown
  }
  throw new Error('nothing was refused')
}

test('empty cells are left out, columns stand in any order, and numbers stay text', () => {
  check('part,model\n00480121,"QV, 1042"\n1E5,\n', [
    { line: 2, cells: { part: '00480121', model: 'QV, 1042' } },
    { line: 3, cells: { part: '1E5' } },
  ])
})

test('a byte order mark is no part of the first column', () => {
  check('\uFEFFmodel,part\nA,B\n', [{ line: 2, cells: { model: 'A', part: 'B' } }])
})

test('a header that is wrong is refused, each fault by name', () => {
  check('model,colour,model\nA,B,C\n', {
    code: 'wrong-header',
    unknown: ['colour'],
    missing: ['part'],
    repeated: ['model'],
  })
})

test('an empty file has no header', () => check('', { code: 'wrong-header', missing: ['model', 'part'] }))

test('what is not UTF-8 is refused', () =>
  check(new Uint8Array([0x6d, 0xff, 0xfe]), { code: 'file-unreadable', why: 'it is not UTF-8 text' }))

test('a file that is not there is refused', () => {
  expect(catchRefusal(() => readTexts(`${file}.absent`)).problem.code).toBe('file-unreadable')
})
