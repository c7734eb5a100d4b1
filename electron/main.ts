import os from 'node:os'
import path from 'node:path'
import {
  app,
  BrowserWindow,
  dialog,
  ipcMain,
  Menu,
  type MenuItemConstructorOptions,
  protocol,
  session,
  utilityProcess,
} from 'electron'
import { v7 as newUuid } from 'uuid'
import type { Problem } from '../shared-schemas/problem.ts'
import type { Reply } from '../shared-schemas/request.ts'
import { connectEngine, type Engine, type EngineLink } from './hosts/engine-client.ts'
import type { EngineSettings } from './hosts/engine-protocol.ts'
import { isOwnPage, pageOrigin, pageScheme, respondWithPage } from './hosts/page-response.ts'
import { makeFolderOf, shopFile } from './hosts/shop-file.ts'

const here = import.meta.dirname

// Both must be said before Electron is ready, which it is not until this module has been read to its end: so nothing
// here waits at the top level.
app.enableSandbox()
protocol.registerSchemesAsPrivileged([
  { scheme: pageScheme, privileges: { standard: true, secure: true, supportFetchAPI: true } },
])

if (app.requestSingleInstanceLock()) start().catch(giveUp)
else app.quit()

async function start(): Promise<void> {
  app.on('web-contents-created', (_event, contents) => refuseLeaving(contents))
  await app.whenReady()
  refusePermissions()
  Menu.setApplicationMenu(Menu.buildFromTemplate(menu))
  protocol.handle(pageScheme, request => respondWithPage(path.join(here, 'renderer'), request.url))
  const engine = connectEngine(startEngine(), {
    newReference: () => newUuid().slice(-8),
    onDeath: reportDeath,
  })
  ipcMain.handle('ask', (event, name: unknown, input: unknown) => answer(engine, event, name, input))
  closeInOrder(engine)
  await openWindow()
}

async function openWindow(): Promise<void> {
  const window = new BrowserWindow({
    title: 'Tallyplate',
    width: 1360,
    height: 860,
    minWidth: 640,
    minHeight: 480,
    show: false,
    autoHideMenuBar: true,
    webPreferences: {
      preload: path.join(here, 'preload.cjs'),
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      webSecurity: true,
    },
  })
  window.once('ready-to-show', () => window.show())
  app.on('second-instance', () => {
    if (window.isMinimized()) window.restore()
    window.focus()
  })
  await window.loadURL(`${pageOrigin}/index.html`)
}

/** The engine in a process of its own, so that no window ever waits for the disk. */
function startEngine(): EngineLink {
  const databaseFile = shopFile(undefined)
  makeFolderOf(databaseFile)
  const settings: EngineSettings = { databaseFile, sampleFolder: sampleFolder(), device: os.hostname() }
  const child = utilityProcess.fork(path.join(here, 'engine.js'), [JSON.stringify(settings)], {
    serviceName: 'Tallyplate engine',
  })
  return {
    send: message => child.postMessage(message),
    onAnswer: take => child.on('message', take),
    onEnd: take => child.once('exit', code => take(`its process ended with code ${code}`)),
  }
}

function sampleFolder(): string {
  return path.join(app.isPackaged ? process.resourcesPath : app.getAppPath(), 'sample-catalogue')
}

async function answer(
  engine: Engine,
  { senderFrame }: Electron.IpcMainInvokeEvent,
  name: unknown,
  input: unknown,
): Promise<Reply> {
  if (!isOwnPage(senderFrame)) return { ok: false, problem: notAdmitted }
  return engine.ask(String(name), input)
}

const notAdmitted: Problem = { code: 'page-not-admitted' }

/** The window shows one page and stays there: no navigation, no second window, no embedded one. */
function refuseLeaving(contents: Electron.WebContents): void {
  contents.setWindowOpenHandler(() => ({ action: 'deny' }))
  contents.on('will-navigate', event => event.preventDefault())
  contents.on('will-frame-navigate', event => event.preventDefault())
  contents.on('will-redirect', event => event.preventDefault())
  contents.on('will-attach-webview', event => event.preventDefault())
}

/** The page needs no camera, place or notification; only to put a slip on the clipboard. */
function refusePermissions(): void {
  session.defaultSession.setPermissionRequestHandler((_contents, permission, decide) =>
    decide(permission === copying),
  )
  session.defaultSession.setPermissionCheckHandler((_contents, permission) => permission === copying)
}

const copying = 'clipboard-sanitized-write'

const menu: MenuItemConstructorOptions[] = [
  ...(process.platform === 'darwin' ? [{ role: 'appMenu' } as const] : []),
  { role: 'fileMenu' },
  { role: 'editMenu' },
  {
    label: 'View',
    submenu: [
      { role: 'resetZoom' },
      { role: 'zoomIn' },
      { role: 'zoomOut' },
      { type: 'separator' },
      { role: 'togglefullscreen' },
    ],
  },
  { role: 'windowMenu' },
]

/** Lets the engine close its database before the program ends. */
function closeInOrder(engine: Engine): void {
  app.on('window-all-closed', () => app.quit())
  app.on('will-quit', event => {
    event.preventDefault()
    void engine.close().finally(() => app.exit(0))
  })
}

function reportDeath(why: string, reference: string): void {
  dialog.showErrorBox(
    'Tallyplate has stopped',
    `The part of Tallyplate that keeps the shop's data stopped (${why}). Start Tallyplate again; what was saved is safe. Quote ${reference} when you report it.`,
  )
  app.exit(1)
}

function giveUp(thrown: unknown): void {
  const why = thrown instanceof Error ? thrown.message : String(thrown)
  dialog.showErrorBox(
    'Tallyplate cannot start',
    `${why}\n\nCheck that your data folder can be written (${shopFile(undefined)}), then start Tallyplate again. npm start -- --browser opens it in a browser meanwhile.`,
  )
  app.exit(1)
}
