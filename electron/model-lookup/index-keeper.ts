import { Worker } from 'node:worker_threads'
import type { ReadableDatabase } from '../database/handles.ts'
import { holdsCurrentModelIndex, mostChanges } from './current-model-index.ts'
import { countCatalogueModels, countChanges, readKeptIndex } from './kept-index-queries.ts'

export interface KeptSizes {
  /** Smaller catalogues are laid out in the blink of an eye, and nothing is kept. */
  readonly fewestModels: number
  /** From this many changes on, the kept index is laid out anew while questions are answered from it and the changes. */
  readonly fewestFolded: number
}

const usualSizes: KeptSizes = { fewestModels: 20_000, fewestFolded: 2_000 }

/** Sees to it that a large catalogue's index is kept with its database. */
export interface IndexKeeper {
  /**
   * Settles when a question about models can be answered at once: where no index is kept, or so much has changed that the
   * kept one is no help, once a thread has laid out another. Never rejects: without it, the question itself lays one out.
   */
  ready(): Promise<void>
  close(): void
}

export interface Keeping {
  readonly database: ReadableDatabase
  readonly databaseFile: string
  /** Opens the database itself, keeps the index and ends. */
  readonly threadFile: string
  readonly sizes?: KeptSizes
}

/** A keeper for a database in a file. */
export function openIndexKeeper({
  database,
  databaseFile,
  threadFile,
  sizes: { fewestModels, fewestFolded } = usualSizes,
}: Keeping): IndexKeeper {
  let worker: Worker | undefined
  let finished: Promise<void> | undefined
  const layOut = (): Promise<void> => {
    finished ??= new Promise<void>(resolve => {
      worker = new Worker(threadFile, { workerData: { databaseFile } })
      // What goes wrong there, such as another program writing for long, leaves what was kept as it was.
      worker.on('error', () => {})
      worker.on('exit', () => {
        worker = undefined
        finished = undefined
        resolve()
      })
    })
    return finished
  }
  return {
    async ready() {
      if (holdsCurrentModelIndex(database)) return
      if (countCatalogueModels(database) < fewestModels) return
      const changes = readKeptIndex(database) === undefined ? Infinity : countChanges(database)
      if (changes > mostChanges) await layOut()
      else if (changes >= fewestFolded) void layOut()
    },
    close: () => void worker?.terminate(),
  }
}
