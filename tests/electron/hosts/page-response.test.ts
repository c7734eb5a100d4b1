import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { contentSecurityPolicy } from '../../../electron/hosts/content-security-policy.ts'
import { isOwnPage, respondWithPage } from '../../../electron/hosts/page-response.ts'

let folder: string
beforeAll(() => {
  folder = mkdtempSync(path.join(os.tmpdir(), 'tallyplate-page-'))
  writeFileSync(path.join(folder, 'index.html'), '<p>page</p>')
})
afterAll(() => rmSync(folder, { recursive: true }))

test('a page comes with the policy that binds it', async () => {
  const response = await respondWithPage(folder, 'tallyplate://shop/index.html')
  expect(response.status).toBe(200)
  expect(await response.text()).toBe('<p>page</p>')
  expect(response.headers.get('content-type')).toBe('text/html; charset=utf-8')
  expect(response.headers.get('content-security-policy')).toBe(contentSecurityPolicy)
})

test.each([
  'tallyplate://elsewhere/index.html',
  'tallyplate://shop/absent.html',
  'tallyplate://shop/..%2fa.html',
])('%s is nothing', async address => {
  expect((await respondWithPage(folder, address)).status).toBe(404)
})

test.each<[string, { url: string; parent: unknown } | null, boolean]>([
  ['the page itself', { url: 'tallyplate://shop/index.html', parent: null }, true],
  ['a frame inside it', { url: 'tallyplate://shop/index.html', parent: {} }, false],
  ['another origin of the scheme', { url: 'tallyplate://shop.example/index.html', parent: null }, false],
  ['a page of the net', { url: 'https://shop.example/', parent: null }, false],
  ['a frame that is gone', null, false],
])('%s may ask: %s', (_title, frame, expected) => expect(isOwnPage(frame)).toBe(expected))
