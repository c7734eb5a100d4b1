import path from 'node:path'
import { Worker } from 'node:worker_threads'
import type { EngineLink } from './engine-client.ts'
import type { EngineSettings } from './engine-protocol.ts'

/** The engine beside this file: its source in a checkout, its bundle once packaged. */
const engineHere = path.join(
  import.meta.dirname,
  import.meta.filename.endsWith('.ts') ? 'engine.ts' : 'engine.js',
)

/** Starts the engine in a worker thread. */
export function startEngineThread(settings: EngineSettings, engineFile = engineHere): EngineLink {
  const worker = new Worker(engineFile, { workerData: settings })
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
