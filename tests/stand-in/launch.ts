import { fork } from 'node:child_process'
import { once } from 'node:events'
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { type BrowserContext, chromium, type Page } from 'playwright-core'
import { requireBrowser } from '../find-browser.ts'
import type { Heard, Order, Report } from './control.ts'

const programFolder = path.join(import.meta.dirname, '../..')

export interface RunningShell {
  readonly page: Page
  /** What Chromium said on the page's console from its first moment on. */
  readonly consoleLines: readonly string[]
  readonly order: (order: Order) => Promise<unknown>
  readonly report: () => Promise<Report>
  readonly exitCode: Promise<number | null>
  /** Bids the program quit, as its menu would, and gives its exit code. */
  readonly quit: () => Promise<number | null>
  readonly tidyUp: () => Promise<void>
}

/** Starts Chromium and, under the stand-in, the built program with its window. */
export async function launchShell(databaseFile: string): Promise<RunningShell> {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'tallyplate-shell-'))
  const context = await chromium.launchPersistentContext(path.join(folder, 'profile'), {
    executablePath: requireBrowser(),
    args: ['--remote-debugging-port=0', '--disable-dev-shm-usage'],
    // Chromium's own sandbox does not run for root, as which build machines run; nothing from outside is loaded.
    chromiumSandbox: false,
  })
  const consoleLines: string[] = []
  context.on('console', message => consoleLines.push(message.text()))
  const port = await readDebuggingPort(path.join(folder, 'profile/DevToolsActivePort'))
  const program = fork(path.join(import.meta.dirname, 'boot.ts'), [programFolder], {
    env: {
      ...process.env,
      STAND_IN_BROWSER: `http://127.0.0.1:${port}`,
      TALLYPLATE_FILE: databaseFile,
    },
    stdio: ['ignore', 'inherit', 'inherit', 'ipc'],
  })
  const exitCode = once(program, 'exit').then(([code]) => code as number | null)
  const waiting = new Map<number, (value: unknown) => void>()
  let lastNumber = 0
  const loaded = new Promise<void>((resolve, reject) => {
    program.on('message', (heard: Heard) => {
      if (heard.event === 'window-loaded') resolve()
      else waiting.get(heard.number)?.(heard.value)
    })
    void exitCode.then(code =>
      reject(new Error(`the program ended with ${code} before its window was loaded`)),
    )
  })
  const order = (given: Order) =>
    new Promise<unknown>(resolve => {
      lastNumber += 1
      waiting.set(lastNumber, resolve)
      program.send({ ...given, number: lastNumber })
    })
  const tidyUp = async () => {
    if (program.exitCode === null) program.kill('SIGKILL')
    await context.close()
    rmSync(folder, { recursive: true, force: true })
  }
  try {
    await loaded
    return {
      page: pageOf(context),
      consoleLines,
      order,
      report: async () => (await order({ order: 'report' })) as Report,
      exitCode,
      quit: () => {
        program.send({ order: 'quit', number: 0 })
        return exitCode
      },
      tidyUp,
    }
  } catch (thrown) {
    await tidyUp()
    throw thrown
  }
}

function pageOf(context: BrowserContext): Page {
  const page = context.pages().find(candidate => candidate.url().includes('tallyplate.localhost'))
  if (page === undefined) throw new Error('the window has no page')
  return page
}

async function readDebuggingPort(file: string): Promise<string> {
  for (let tries = 0; tries < 250; tries += 1) {
    const [port] = existsSync(file) ? readFileSync(file, 'utf8').split('\n') : []
    if (port) return port
    await new Promise(resolve => setTimeout(resolve, 20))
  }
  throw new Error('Chromium did not say its debugging port')
}
