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

/** The laying out of an index somewhere else, which keeps it with the database. */
export interface LayingOut {
  /** Settles when it ended, whether an index was kept or not. */
  readonly finished: Promise<void>
  stop(): void
}

export interface Keeping {
  readonly database: ReadableDatabase
  readonly startLayingOut: () => LayingOut
  readonly sizes?: KeptSizes
}

/** A keeper for a database that others can open too. */
export function openIndexKeeper({
  database,
  startLayingOut,
  sizes: { fewestModels, fewestFolded } = usualSizes,
}: Keeping): IndexKeeper {
  let running: LayingOut | undefined
  const layOut = async () => {
    running ??= startLayingOut()
    await running.finished
    running = undefined
  }
  return {
    async ready() {
      if (holdsCurrentModelIndex(database)) return
      if (countCatalogueModels(database) < fewestModels) return
      const changes = readKeptIndex(database) === undefined ? Infinity : countChanges(database)
      if (changes > mostChanges) await layOut()
      else if (changes >= fewestFolded) void layOut()
    },
    close: () => running?.stop(),
  }
}
