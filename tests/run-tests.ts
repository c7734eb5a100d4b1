import { spawnSync } from 'node:child_process'
import path from 'node:path'
import { startVitest } from 'vitest/node'
import { findBrowser, noBrowser } from './find-browser.ts'
import PlainReporter from './plain-reporter.ts'

/** `npm test [-- filters]`: finds a browser, and runs every test or the files that match. */
const filters = process.argv.slice(2)

if (!findBrowser() && isDebianRoot()) installChromium()
if (!findBrowser()) {
  console.error(noBrowser)
  process.exit(2)
}

// Tests never fetch anything, whatever the machine is set to.
process.env.NODE_ENV = 'test'
const vitest = await startVitest('test', filters, {
  config: path.join(import.meta.dirname, 'vitest.config.ts'),
  watch: false,
  reporters: ['default', new PlainReporter()],
})
const ranNothing = vitest.state.getFiles().length === 0
if (ranNothing) console.error(`No test file matches ${filters.join(' ')}.`)
await vitest.close()
process.exit(ranNothing ? 1 : (process.exitCode ?? 0))

function isDebianRoot(): boolean {
  return process.getuid?.() === 0 && spawnSync('apt-get', ['--version']).status === 0
}

function installChromium(): void {
  console.error('Installing Chromium for the tests …')
  for (const given of [['update'], ['install', '-y', '--no-install-recommends', 'chromium']])
    spawnSync('apt-get', given, {
      stdio: ['ignore', 'ignore', 'inherit'],
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    })
}
