import path from 'node:path'
import { Worker } from 'node:worker_threads'
import type { Surroundings } from '../application.ts'

type LayingOut = ReturnType<NonNullable<Surroundings['layOutIndex']>>

/** The thread beside this file: its source in a checkout, its bundle once packaged. */
const threadHere = path.join(
  import.meta.dirname,
  import.meta.filename.endsWith('.ts') ? 'keep-index-thread.ts' : 'keep-index-thread.js',
)

/** Starts a thread that lays the look-up index of a shop's file out and keeps it there. */
export function startKeepIndexThread(databaseFile: string): LayingOut {
  const worker = new Worker(threadHere, { workerData: databaseFile })
  const finished = new Promise<void>(resolve => {
    // What goes wrong there, such as another program that writes for long, leaves what was kept as it was.
    worker.on('error', () => {})
    worker.on('exit', () => resolve())
  })
  return { finished, stop: () => void worker.terminate() }
}
