import path from 'node:path'
import { expect, test } from 'vitest'
import { findStaticFile } from '../../../electron/hosts/static-files.ts'

const folder = path.resolve('/shop/page')

function check(given: string, expected: { file: string; type: string; cache: string } | 'nothing'): void {
  const found = findStaticFile(folder, given)
  if (expected === 'nothing') expect(found).toBeUndefined()
  else
    expect(found).toEqual({
      file: path.join(folder, expected.file),
      contentType: expected.type,
      cacheControl: expected.cache,
    })
}

const forGood = 'private, max-age=31536000, immutable'

test.each<[string, { file: string; type: string; cache: string }]>([
  ['/', { file: 'index.html', type: 'text/html; charset=utf-8', cache: 'no-cache' }],
  ['/index.html', { file: 'index.html', type: 'text/html; charset=utf-8', cache: 'no-cache' }],
  [
    '/assets/index-D79Hvorq.js',
    { file: 'assets/index-D79Hvorq.js', type: 'text/javascript; charset=utf-8', cache: forGood },
  ],
  [
    '/assets/mono-latin-Ab_3-xY9.woff2',
    { file: 'assets/mono-latin-Ab_3-xY9.woff2', type: 'font/woff2', cache: forGood },
  ],
  ['/plate.svg', { file: 'plate.svg', type: 'image/svg+xml', cache: 'no-cache' }],
])('%s is served', (given, expected) => check(given, expected))

test.each([
  '/../secret.html',
  '/..%2fsecret.html',
  '/assets/%2e%2e/%2e%2e/secret.html',
  '/%00.html',
  '/%E0%A4%A',
  '/shop.sqlite',
  '/assets',
  '/assets/index.js.map',
])('%s is not', given => check(given, 'nothing'))
