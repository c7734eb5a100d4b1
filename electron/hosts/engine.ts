import { isMainThread, parentPort, workerData } from 'node:worker_threads'
import { openApplication } from '../application.ts'
import type { EngineAnswer, EngineClosing, EngineQuestion, EngineSettings } from './engine-protocol.ts'
import { surroundingsOf } from './surroundings.ts'

/**
 * The application off the window's thread: in Electron's utility process (settings as the first argument) or in a
 * worker thread (settings as its data). Answers each question once, in whatever order they are done.
 */
const { settings, post, listen, leave } = findHost()
const application = openApplication(surroundingsOf(settings))

listen(async message => {
  if ('close' in message) {
    application.close()
    return leave()
  }
  post({ id: message.id, reply: await application.ask(message.name, message.input) })
})

type Received = EngineQuestion | EngineClosing

interface Host {
  readonly settings: EngineSettings
  readonly post: (answer: EngineAnswer) => void
  readonly listen: (take: (message: Received) => Promise<void> | void) => void
  readonly leave: () => void
}

function findHost(): Host {
  if (!isMainThread && parentPort !== null) {
    const port = parentPort
    return {
      settings: workerData as EngineSettings,
      post: answer => port.postMessage(answer),
      listen: take => port.on('message', message => void take(message)),
      leave: () => port.close(),
    }
  }
  const port = process.parentPort
  if (port === undefined)
    throw new Error('the engine is started by a host: a worker thread or a utility process')
  return {
    settings: JSON.parse(process.argv[2] ?? '') as EngineSettings,
    post: answer => port.postMessage(answer),
    listen: take => port.on('message', ({ data }) => void take(data)),
    leave: () => process.exit(0),
  }
}
