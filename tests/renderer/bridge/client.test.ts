import { afterEach, expect, test, vi } from 'vitest'
import { AskProblem } from '../../../renderer/bridge/ask-problem.ts'
import { ask } from '../../../renderer/bridge/client.ts'
import type { Reply } from '../../../shared-schemas/request.ts'

afterEach(() => vi.unstubAllGlobals())

/** A page in a browser whose host answers like this. */
function inBrowser(answer: (address: string, sent: RequestInit) => Promise<Response>): void {
  vi.stubGlobal('window', {})
  vi.stubGlobal('fetch', answer)
}

/** A page in the window, whose preload script put this there. */
function inWindow(answer: (name: string, input: unknown) => Promise<Reply>): void {
  vi.stubGlobal('window', { tallyplate: { ask: answer } })
}

const book = { rows: [] }

async function problemOf(asked: Promise<unknown>): Promise<AskProblem> {
  try {
    await asked
  } catch (thrown) {
    if (thrown instanceof AskProblem) return thrown
    throw thrown
  }
  throw new Error('the question was answered')
}

test('in a browser the question goes to its host as JSON, and the value comes back', async () => {
  const sent: unknown[] = []
  inBrowser(async (address, { method, headers, body }) => {
    sent.push([address, method, headers, body])
    return Response.json({ ok: true, value: book })
  })
  expect(await ask('stock-ledger.list-on-hand', { location: 'VAN1' })).toEqual(book)
  expect(sent).toEqual([
    ['/ask/stock-ledger.list-on-hand', 'POST', { 'content-type': 'application/json' }, '{"location":"VAN1"}'],
  ])
})

test('in the window it goes over the bridge', async () => {
  inWindow(async (name, input) => ({ ok: true, value: { rows: [{ name, input }] } }))
  const found: unknown = await ask('stock-ledger.list-on-hand', {})
  expect(found).toEqual({ rows: [{ name: 'stock-ledger.list-on-hand', input: {} }] })
})

test('a refusal is thrown with its problem and its sentence', async () => {
  const problem = { code: 'location-not-found', typed: 'VAN9', known: ['SHOP'] }
  inBrowser(async () => Response.json({ ok: false, problem }, { status: 409 }))
  const thrown = await problemOf(ask('stock-ledger.list-on-hand', { location: 'VAN9' }))
  expect(thrown.problem).toEqual(problem)
  expect(thrown.message).toBe('No location is called “VAN9”. Known: SHOP.')
})

test.each([401, 403, 421])('a host that lets nobody in (%i) says how to get in', async status => {
  inBrowser(async () => new Response('turned away', { status }))
  const { problem } = await problemOf(ask('stock-ledger.list-on-hand', {}))
  expect(problem).toEqual({ code: 'page-not-admitted' })
})

test('a program that is gone is said to be gone, by either way', async () => {
  const gone = { code: 'program-not-running' }
  inBrowser(async () => {
    throw new TypeError('fetch failed')
  })
  expect((await problemOf(ask('stock-ledger.list-on-hand', {}))).problem).toEqual(gone)
  inBrowser(async () => new Response('half a repl'))
  expect((await problemOf(ask('stock-ledger.list-on-hand', {}))).problem).toEqual(gone)
  inWindow(async () => {
    throw new Error("Error invoking remote method 'ask'")
  })
  expect((await problemOf(ask('stock-ledger.list-on-hand', {}))).problem).toEqual(gone)
})
