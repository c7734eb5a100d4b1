import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { type Fetched, type FetchLimits, fetchElectron } from '../../../electron/start/fetch-electron.ts'

let folder: string
beforeAll(() => {
  folder = mkdtempSync(path.join(os.tmpdir(), 'tallyplate-fetch-'))
})
afterAll(() => rmSync(folder, { recursive: true }))

/** Runs a script in the place of Electron's installer: the network is the one thing replaced. */
async function check(
  given: { script: string; limits?: Partial<FetchLimits> },
  expected: Fetched | { ok: false; why: RegExp },
): Promise<void> {
  const installer = path.join(folder, 'install.mjs')
  writeFileSync(installer, given.script)
  const fetched = await fetchElectron({
    installer,
    showMegabytes: () => {},
    limits: { stalledAfterSeconds: 5, atMostSeconds: 10, ...given.limits },
  })
  expect(fetched.ok).toBe(expected.ok)
  if (!fetched.ok && !expected.ok) expect(fetched.why).toMatch(expected.why)
}

test('an installer that ends well has fetched it', () => check({ script: 'process.exit(0)' }, { ok: true }))

test('a refusal ends at once with the installer’s first word', async () => {
  const startedAt = performance.now()
  await check(
    { script: "console.error('HTTPError: 403 Forbidden\\n    at somewhere'); process.exit(1)" },
    { ok: false, why: /^403 Forbidden$/ },
  )
  expect(performance.now() - startedAt).toBeLessThan(4000)
})

test('one that receives nothing is given up', () =>
  check(
    { script: 'setInterval(() => {}, 1000)', limits: { stalledAfterSeconds: 0.2 } },
    { ok: false, why: /nothing arrived for 0.2 s/ },
  ))

test('one that goes on and on is given up too', () =>
  check(
    {
      script: `
        import { appendFileSync } from 'node:fs'
        import os from 'node:os'
        setInterval(() => appendFileSync(os.tmpdir() + '/part.zip', 'x'.repeat(1000)), 20)`,
      limits: { atMostSeconds: 1 },
    },
    { ok: false, why: /longer than 1 s/ },
  ))
