import { EventEmitter } from 'node:events'
import { existsSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { type Browser, type CDPSession, chromium, type Page, type Route } from 'playwright-core'
import type { Heard } from './control.ts'
import { asPlainJson } from './plain-json.ts'
import { asChromiumAddress, asElectronAddress, world } from './world.ts'

export interface WindowOptions {
  readonly width?: number
  readonly height?: number
  readonly webPreferences?: {
    readonly preload?: string
    readonly contextIsolation?: boolean
    readonly sandbox?: boolean
    readonly nodeIntegration?: boolean
    readonly webSecurity?: boolean
  }
}

const bridgeScript = readFileSync(new URL('./context-bridge.js', import.meta.url), 'utf8')
const preloadWorld = 'preload'
let browser: Browser | undefined
let openWindows = 0

/** The window's page: an emitter of Electron's events that the program may refuse. */
class WebContents extends EventEmitter {
  openHandler: ((details: { url: string }) => { action: string }) | undefined

  setWindowOpenHandler(handler: (details: { url: string }) => { action: string }): void {
    this.openHandler = handler
  }
}

export class BrowserWindow extends EventEmitter {
  readonly webContents = new WebContents()
  readonly #started: Promise<Started>
  #loadsItself = false

  constructor({ width = 800, height = 600, webPreferences = {} }: WindowOptions = {}) {
    super()
    if (!world.isReady) throw new Error('Cannot create BrowserWindow before app is ready')
    refuseInsecure(webPreferences)
    openWindows += 1
    world.onWindowCreated(this.webContents)
    this.#started = this.#start({ width, height }, webPreferences.preload ?? '')
  }

  show(): void {
    this.emit('show')
  }
  isMinimized(): boolean {
    return false
  }
  restore(): void {}
  focus(): void {
    world.report.timesFocused += 1
  }

  async loadURL(address: string): Promise<void> {
    const { page } = await this.#started
    this.#loadsItself = true
    await page.goto(asChromiumAddress(address), { waitUntil: 'load' })
    this.#loadsItself = false
    this.emit('ready-to-show')
    const heard: Heard = { event: 'window-loaded', url: address }
    process.send?.(heard)
  }

  async #start(size: { width: number; height: number }, preload: string): Promise<Started> {
    browser ??= await chromium.connectOverCDP(process.env.STAND_IN_BROWSER ?? '')
    const [context] = browser.contexts()
    if (context === undefined) throw new Error('the browser has no context')
    const page = await context.newPage()
    await page.setViewportSize(size)
    const protocol = await context.newCDPSession(page)
    const started: Started = { page, protocol, preloadContext: undefined }
    this.#watchPage(page)
    await this.#runPreload(started, preload)
    await page.route('**/*', route => this.#serve(page, route))
    world.closePages = async () => {
      await page.close().catch(() => {})
    }
    return started
  }

  #watchPage(page: Page): void {
    page.on('popup', popup => {
      void popup.close()
    })
    page.on('close', () => {
      openWindows -= 1
      this.emit('closed')
      if (openWindows === 0) world.onAllWindowsClosed()
    })
  }

  async #runPreload(started: Started, preload: string): Promise<void> {
    const { protocol } = started
    protocol.on('Runtime.executionContextCreated', ({ context }) => {
      if (context.name === preloadWorld) started.preloadContext = context.id
    })
    protocol.on('Runtime.bindingCalled', ({ payload }) => {
      void this.#answer(started, JSON.parse(payload))
    })
    protocol.on('Page.windowOpen', ({ url }) => {
      const decided = this.webContents.openHandler?.({ url: asElectronAddress(url) })
      if (decided?.action !== 'deny') throw new Error(`a window was let open at ${url}`)
      world.report.refusedWindows.push(asElectronAddress(url))
    })
    await protocol.send('Runtime.enable')
    await protocol.send('Page.enable')
    await protocol.send('Runtime.addBinding', { name: 'sendToMain', executionContextName: preloadWorld })
    await protocol.send('Page.addScriptToEvaluateOnNewDocument', {
      source: `(${bridgeScript})('page', () => {})`,
    })
    await protocol.send('Page.addScriptToEvaluateOnNewDocument', {
      source: `(${bridgeScript})('preload', (require, module, exports) => {${readFileSync(preload, 'utf8')}\n})`,
      worldName: preloadWorld,
    })
  }

  async #serve(page: Page, route: Route): Promise<void> {
    const request = route.request()
    const url = asElectronAddress(request.url())
    const leavesPage = request.isNavigationRequest() && request.frame() === page.mainFrame()
    if (leavesPage && !this.#loadsItself && this.#isRefused(url)) return route.abort('aborted')
    const serve = world.servers.get(new URL(url).protocol.replace(':', ''))
    // A program that works with no network asks for nothing else.
    if (serve === undefined) return route.abort('blockedbyclient')
    const response = await serve(new Request(url, { method: request.method() }))
    await route.fulfill({
      status: response.status,
      headers: Object.fromEntries(response.headers),
      body: Buffer.from(await response.arrayBuffer()),
    })
  }

  #isRefused(url: string): boolean {
    let isPrevented = false
    const preventDefault = () => {
      isPrevented = true
    }
    this.webContents.emit('will-navigate', { url, preventDefault })
    if (isPrevented) world.report.refusedNavigations.push(url)
    return isPrevented
  }

  async #answer(started: Started, { id, channel, given }: Invocation): Promise<void> {
    const senderFrame = { url: asElectronAddress(started.page.url()), parent: null }
    let outcome: { value: unknown } | { error: string }
    try {
      const handler = world.channels.get(channel)
      if (handler === undefined) throw new Error(`No handler registered for '${channel}'`)
      outcome = { value: asPlainJson(await handler({ senderFrame }, ...given), `the reply to ${channel}`) }
    } catch (thrown) {
      outcome = { error: `Error invoking remote method '${channel}': ${thrown}` }
    }
    if (started.page.isClosed() || started.preloadContext === undefined) return
    await started.protocol
      .send('Runtime.evaluate', {
        contextId: started.preloadContext,
        expression: `hearFromMain(${JSON.stringify({ id, ...outcome })})`,
      })
      .catch(() => {
        // The page went away while its answer was on the way.
      })
  }
}

interface Started {
  readonly page: Page
  readonly protocol: CDPSession
  preloadContext: number | undefined
}

interface Invocation {
  readonly id: number
  readonly channel: string
  readonly given: readonly unknown[]
}

function refuseInsecure(preferences: NonNullable<WindowOptions['webPreferences']>): void {
  const { preload, contextIsolation, sandbox, nodeIntegration, webSecurity } = preferences
  if (contextIsolation === false || sandbox === false || nodeIntegration === true || webSecurity === false)
    throw new Error('insecure webPreferences')
  if (sandbox !== true && !world.isSandboxed()) throw new Error('the window is not sandboxed')
  if (preload === undefined || !path.isAbsolute(preload) || !existsSync(preload))
    throw new Error(`Unable to load preload script: ${preload}`)
}
