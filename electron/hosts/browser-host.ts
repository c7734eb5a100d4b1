import { randomBytes } from 'node:crypto'
import { createServer, type Server } from 'node:http'
import type { AddressInfo } from 'node:net'
import { v7 as newUuid } from 'uuid'
import { Refusal } from '../requests/refusal.ts'
import { connectEngine, type Engine } from './engine-client.ts'
import type { EngineSettings } from './engine-protocol.ts'
import { startEngineThread } from './engine-thread.ts'
import { type Instance, noteInstance, refuseSecondInstance, removeNote } from './instance-file.ts'
import { answerRequest } from './loopback-requests.ts'
import { SessionDoor } from './session-door.ts'

export interface BrowserHostSettings {
  readonly engine: EngineSettings
  /** 0 takes any free port. */
  readonly port: number
  /** The built page. */
  readonly pageFolder: string
  /** The engine's program, where it is not the one beside this file. */
  readonly engineFile?: string
}

export interface BrowserHost {
  readonly port: number
  readonly engine: Engine
  /** An address that opens the page once, for one browser. Asking again makes the earlier one void. */
  readonly newAddress: () => string
  readonly close: () => Promise<void>
  /** Settles with a sentence when the engine dies; the host has closed itself by then. */
  readonly died: Promise<string>
}

/** Serves the page and the requests on 127.0.0.1 alone. Refuses a busy port and a second host on the same file. */
export async function openBrowserHost(settings: BrowserHostSettings): Promise<BrowserHost> {
  const { databaseFile } = settings.engine
  await refuseSecondInstance(databaseFile)
  const server = createServer()
  const port = await listen(server, settings.port)
  const own: Instance = { pid: process.pid, port, secret: newSecret() }
  try {
    await noteInstance(databaseFile, own)
  } catch (thrown) {
    server.close()
    throw thrown
  }

  const died = Promise.withResolvers<string>()
  const engine = connectEngine(startEngineThread(settings.engine, settings.engineFile), {
    newReference: () => newUuid().slice(-8),
    onDeath: (why, reference) => {
      closeDoor(server)
      removeNote(databaseFile, own)
      died.resolve(
        `The engine of Tallyplate stopped (${why}; reference ${reference}). Start Tallyplate again.`,
      )
    },
  })
  const door = new SessionDoor(port, { token: newSecret(), session: newSecret() })
  server.on('request', answerRequest({ door, engine, pageFolder: settings.pageFolder, secret: own.secret }))

  return {
    port,
    engine,
    died: died.promise,
    newAddress: () => {
      const token = newSecret()
      door.renewToken(token)
      return `http://127.0.0.1:${port}/?token=${token}`
    },
    close: async () => {
      closeDoor(server)
      await engine.close()
      removeNote(databaseFile, own)
    },
  }
}

function listen(server: Server, port: number): Promise<number> {
  return new Promise((resolve, reject) => {
    server.once('error', (error: NodeJS.ErrnoException) =>
      reject(isUnusable(error) ? new Refusal({ code: 'port-busy', port }) : error),
    )
    server.listen({ port, host: '127.0.0.1', exclusive: true }, () =>
      resolve((server.address() as AddressInfo).port),
    )
  })
}

/** Taken by another program, or below the numbers that a user may open. */
function isUnusable({ code }: NodeJS.ErrnoException): boolean {
  return code === 'EADDRINUSE' || code === 'EACCES'
}

/** Takes no more requests, lets those under way be answered, and drops browsers that only keep the line open. */
function closeDoor(server: Server): void {
  server.close()
  server.closeIdleConnections()
  setTimeout(() => server.closeAllConnections(), answerUnderWayMilliseconds).unref()
}

const answerUnderWayMilliseconds = 1000

function newSecret(): string {
  return randomBytes(32).toString('base64url')
}
