import path from 'node:path'
import { wordProblem } from '../../shared-schemas/problem-wording.ts'
import { WrongUse } from '../hosts/command-line/wrong-use.ts'
import { programFolder } from '../hosts/installation.ts'
import { progressLine } from '../hosts/progress-line.ts'
import { makeFolderOf, shopFile, userDataFolder } from '../hosts/shop-file.ts'
import { isBuildFresh } from '../packaging/build-freshness.ts'
import { Refusal } from '../requests/refusal.ts'
import { type Choice, chooseWindow } from './choose-window.ts'
import { electronFolder, findElectronBinary, wantedElectronVersion } from './electron-binary.ts'
import { fetchElectron, usualLimits } from './fetch-electron.ts'
import { FetchMemory } from './fetch-memory.ts'
import { hasDisplay } from './open-browser.ts'
import { openWindow } from './open-window.ts'
import { showInBrowser } from './show-in-browser.ts'
import { readStartOptions, type StartOptions, writeStartHelp } from './start-options.ts'

try {
  process.exitCode = await start(readStartOptions(process.argv.slice(2)))
} catch (thrown) {
  process.exitCode = report(thrown)
}

/** One line for what a person can mend (2); all there is to know for what we must (3). */
function report(thrown: unknown): 2 | 3 {
  const line = wordMendable(thrown)
  if (line !== undefined) console.error(line)
  else console.error('Something went wrong inside Tallyplate. Report it with the lines below.\n', thrown)
  return line === undefined ? 3 : 2
}

function wordMendable(thrown: unknown): string | undefined {
  if (thrown instanceof WrongUse) return thrown.message
  return thrown instanceof Refusal ? wordProblem(thrown.problem) : undefined
}

async function start(options: StartOptions): Promise<number> {
  if (options.help) {
    console.log(writeStartHelp())
    return 0
  }
  await buildWhenStale()
  const databaseFile = shopFile(options.file)
  makeFolderOf(databaseFile)
  const choice = await choose(options)
  const inBrowser = (because: string) =>
    showInBrowser({ databaseFile, port: options.port, noOpen: options.noOpen, because })
  if (choice.kind === 'browser') return inBrowser(choice.because)
  console.log('The Counter opens in its own window, because Electron is installed.')
  const end = await openWindow({ electron: choice.electron, programFolder, databaseFile })
  return end.kind === 'closed' ? end.code : inBrowser(`Electron could not start here (${end.why})`)
}

async function buildWhenStale(): Promise<void> {
  if (await isBuildFresh(programFolder)) return
  console.error('Building the screen, since its sources have changed …')
  const { buildBundles } = await import('../packaging/build-bundles.ts')
  await buildBundles()
}

async function choose(options: StartOptions): Promise<Exclude<Choice, { kind: 'fetch' }>> {
  const memory = new FetchMemory(userDataFolder())
  const version = wantedElectronVersion(programFolder) ?? 'none'
  const installation = { folder: programFolder, version }
  const found = {
    wantsBrowser: options.browser,
    wantsFetch: options.fetchElectron,
    electron: findElectronBinary(programFolder),
    earlierFailure: memory.readFailure(installation),
    isUnattended: process.env.CI === 'true' || process.env.NODE_ENV === 'test',
    hasDisplay: hasDisplay(process.platform, process.env),
    isLinuxRoot: process.platform === 'linux' && process.getuid?.() === 0,
  }
  const choice = chooseWindow(found)
  if (choice.kind !== 'fetch') return choice

  const progress = progressLine(process.stderr)
  console.error(
    `Electron is not installed; fetching it once (${version}). npm start -- --browser does without.`,
  )
  const fetched = await fetchElectron({
    installer: path.join(electronFolder(programFolder), 'install.js'),
    showMegabytes: done => progress.show({ what: 'Fetching Electron, megabytes so far:', done, expected: 0 }),
    limits: usualLimits,
  })
  progress.clear()
  if (!fetched.ok) {
    memory.noteFailure(installation, fetched.why)
    return { kind: 'browser', because: `Electron could not be fetched (${fetched.why})` }
  }
  memory.forgetFailure(installation)
  const now = chooseWindow({
    ...found,
    electron: findElectronBinary(programFolder),
    earlierFailure: undefined,
  })
  return now.kind === 'fetch' ? { kind: 'browser', because: 'Electron was fetched but is not whole' } : now
}
