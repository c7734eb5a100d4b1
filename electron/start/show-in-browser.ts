import os from 'node:os'
import type { StartUp } from '../../shared-schemas/application.ts'
import { wordProblem } from '../../shared-schemas/problem-wording.ts'
import { type BrowserHost, openBrowserHost } from '../hosts/browser-host.ts'
import { builtEngine, pageFolder, sampleFolder } from '../hosts/installation.ts'
import { untilInterrupted } from '../hosts/interruption.ts'
import { progressLine } from '../hosts/progress-line.ts'
import { openBrowser } from './open-browser.ts'

export interface BrowserStart {
  readonly databaseFile: string
  readonly port: number
  readonly noOpen: boolean
  /** Completes the sentence “shown in a browser, because …”. */
  readonly because: string
}

/** Serves the Counter to a browser, says where and why, and stays until it is interrupted. Gives the exit code. */
export async function showInBrowser({ databaseFile, port, noOpen, because }: BrowserStart): Promise<number> {
  const engine = { databaseFile, sampleFolder, device: os.hostname() }
  const host = await openBrowserHost({ engine, port, pageFolder, engineFile: builtEngine })
  const interrupted = untilInterrupted().then(() => 'interrupted' as const)
  const startUp = await Promise.race([waitForShop(host), interrupted, host.died])
  if (startUp !== 'interrupted' && typeof startUp !== 'string' && startUp.state === 'failed') {
    console.error(wordProblem(startUp.problem))
    await host.close()
    return startUp.problem.code === 'unexpected' ? 3 : 2
  }
  if (typeof startUp !== 'string') await announce(host, { because, noOpen })
  const end = typeof startUp === 'string' ? startUp : await Promise.race([interrupted, host.died])
  if (end !== 'interrupted') {
    console.error(end)
    return 3
  }
  await host.close()
  return 0
}

/** Asks the engine until the shop is open, showing how far the sample has come. */
async function waitForShop({ engine }: BrowserHost): Promise<StartUp> {
  const progress = progressLine(process.stderr)
  for (;;) {
    const reply = await engine.ask('application.read-start-up', {})
    if (!reply.ok) return { state: 'failed', problem: reply.problem }
    // The engine's reply to this very request.
    const startUp = reply.value as StartUp
    if (startUp.state === 'ready' || startUp.state === 'failed') {
      progress.clear()
      return startUp
    }
    if (startUp.state === 'loading-sample')
      progress.show({
        what: `Loading the sample shop: ${startUp.file || 'reading files'}`,
        done: startUp.rowsDone,
        expected: startUp.rowsExpected,
      })
    await new Promise(resolve => setTimeout(resolve, 25))
  }
}

async function announce(
  host: BrowserHost,
  { because, noOpen }: { readonly because: string; readonly noOpen: boolean },
): Promise<void> {
  const address = host.newAddress()
  console.log(`The Counter is shown in a browser, because ${because}.`)
  console.log(address)
  const isOpened = !noOpen && (await openBrowser(address))
  const next = isOpened
    ? 'Your browser opens it'
    : 'Open this address in a browser on this machine; it works once'
  console.log(`${next}. ${offerAnother(host)}Stop with Ctrl+C.`)
}

/** The address is spent once it was opened. Whoever closes the browser gets another one here, without starting anew. */
function offerAnother(host: BrowserHost): string {
  if (!process.stdin.isTTY) return ''
  process.stdin.on('data', () => console.log(host.newAddress())).unref()
  return 'Press Enter for another address. '
}
