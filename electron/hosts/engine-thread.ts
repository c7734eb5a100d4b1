import path from 'node:path'
import { Worker } from 'node:worker_threads'
import type { EngineLink } from './engine-client.ts'
import type { EngineSettings } from './engine-protocol.ts'

/** Starts the engine in a worker thread: from its source in a checkout, from its bundle once packaged. */
export function startEngineThread(settings: EngineSettings): EngineLink {
  const engine = import.meta.filename.endsWith('.ts') ? 'engine.ts' : 'engine.js'
  const worker = new Worker(path.join(import.meta.dirname, engine), { workerData: settings })
  let failure: string | undefined
  worker.on('error', error => {
    failure = error instanceof Error ? error.message : String(error)
  })
  return {
    send: message => worker.postMessage(message),
    onAnswer: take => worker.on('message', take),
    onEnd: take => worker.on('exit', code => take(failure ?? `its thread ended with code ${code}`)),
  }
}
