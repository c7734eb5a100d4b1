import { type ChildProcess, fork } from 'node:child_process'
import { EventEmitter } from 'node:events'
import { BrowserWindow } from './browser-window.ts'
import type { Heard, Order, Report } from './control.ts'
import { asPlainJson } from './plain-json.ts'
import { world } from './world.ts'

export { BrowserWindow }

interface AppEvent {
  preventDefault(): void
}

class App extends EventEmitter {
  readonly isPackaged = false
  isSandboxed = false
  readonly #ready = Promise.withResolvers<void>()
  #folder = ''

  enableSandbox(): void {
    if (world.isReady) throw new Error('app.enableSandbox() must be called before the app is ready')
    this.isSandboxed = true
  }
  requestSingleInstanceLock(): boolean {
    return true
  }
  whenReady(): Promise<void> {
    return this.#ready.promise
  }
  getAppPath(): string {
    return this.#folder
  }
  quit(): void {
    let isPrevented = false
    const event: AppEvent = {
      preventDefault: () => {
        isPrevented = true
      },
    }
    this.emit('will-quit', event)
    if (!isPrevented) this.exit(0)
  }
  exit(code: number): void {
    void world.closePages().finally(() => process.exit(code))
  }
  prepare(folder: string): void {
    this.#folder = folder
  }
  becomeReady(): void {
    world.isReady = true
    this.#ready.resolve()
    this.emit('ready')
  }
}

export const app = new App()
world.onWindowCreated = contents => app.emit('web-contents-created', {}, contents)
world.onAllWindowsClosed = () => app.emit('window-all-closed')
world.isSandboxed = () => app.isSandboxed

export const protocol = {
  registerSchemesAsPrivileged(schemes: readonly { scheme: string }[]): void {
    if (world.isReady) throw new Error('protocol.registerSchemesAsPrivileged must be called before ready')
    for (const { scheme } of schemes) world.schemes.add(scheme)
  },
  handle(scheme: string, answer: (request: Request) => Promise<Response>): void {
    if (!world.schemes.has(scheme)) throw new Error(`${scheme} was not registered as privileged`)
    world.servers.set(scheme, answer)
  },
}

export const ipcMain = {
  handle(channel: string, answer: (event: unknown, ...given: unknown[]) => unknown): void {
    if (world.channels.has(channel)) throw new Error(`a second handler for “${channel}”`)
    world.channels.set(channel, answer)
  },
}

const report = { errorBoxes: [] as string[], menuRoles: [] as string[] }

export const dialog = {
  showErrorBox(title: string, content: string): void {
    report.errorBoxes.push(`${title}: ${content}`)
    console.error(`[error box] ${title}: ${content}`)
  },
}

type Decide = (granted: boolean) => void
let decidePermission: ((contents: unknown, permission: string, decide: Decide) => void) | undefined

export const session = {
  defaultSession: {
    setPermissionRequestHandler(handler: typeof decidePermission): void {
      decidePermission = handler
    },
    setPermissionCheckHandler(): void {},
  },
}

interface MenuItem {
  readonly role?: string
  readonly submenu?: readonly MenuItem[]
  readonly click?: unknown
}

export const Menu = {
  buildFromTemplate(template: readonly MenuItem[]): readonly MenuItem[] {
    return template
  },
  setApplicationMenu(items: readonly MenuItem[]): void {
    report.menuRoles = items.flatMap(rolesOf)
  },
}

function rolesOf({ role, submenu, click }: MenuItem): string[] {
  if (click !== undefined) return ['a command of its own']
  return [...(role === undefined ? [] : [role]), ...(submenu ?? []).flatMap(rolesOf)]
}

let engineProcess: ChildProcess | undefined

export const utilityProcess = {
  fork(file: string, given: readonly string[]) {
    const child = fork(file, given, {
      serialization: 'advanced',
      execArgv: ['--import', new URL('./engine-boot.ts', import.meta.url).href],
    })
    engineProcess = child
    return {
      postMessage: (message: object) => child.send(message),
      on: (event: string, take: (value: unknown) => void) => child.on(event, take),
      once: (event: string, take: (value: unknown) => void) => child.once(event, take),
    }
  },
}

export function prepareApp(folder: string): void {
  app.prepare(folder)
}

/** Electron is ready only after the main module has been read to its end. */
export function becomeReady(): void {
  app.becomeReady()
}

process.on('message', ({ number, ...order }: Order & { readonly number: number }) => {
  void carryOut(order as Order).then(value => {
    const heard: Heard = { event: 'answer', number, value: value ?? null }
    process.send?.(heard)
  })
})

async function carryOut(order: Order): Promise<unknown> {
  switch (order.order) {
    case 'report':
      return { ...report, ...world.report } satisfies Report
    case 'start-again':
      return app.emit('second-instance', {}, [], '')
    case 'ask-from-frame':
      return askFromFrame(order)
    case 'request-permission':
      return new Promise(resolve => decidePermission?.({}, order.permission, resolve))
    case 'kill-engine':
      return engineProcess?.kill('SIGKILL')
    case 'quit':
      return app.quit()
  }
}

/** Asks as some other frame would, one that got hold of the channel. */
async function askFromFrame({
  url,
  isOutermost,
  name,
}: Extract<Order, { order: 'ask-from-frame' }>): Promise<unknown> {
  const event = { senderFrame: { url, parent: isOutermost ? null : {} } }
  return asPlainJson(await world.channels.get('ask')?.(event, name, {}), 'a reply')
}
