import type { ReadableDatabase } from '../../database/handles.ts'
import { readCatalogueVersion } from '../catalogue-state-queries.ts'

/** The long lists that were asked for last, kept until the catalogue changes: page after page is asked of the same one. */
export class RecentLists<List> {
  readonly #ofDatabases = new WeakMap<ReadableDatabase, Recent<List>>()

  /** The list by this name, made anew where the catalogue changed while it was made. */
  async read(database: ReadableDatabase, name: string, make: () => Promise<List>): Promise<List> {
    const version = readCatalogueVersion(database)
    const recent = this.#recent(database, version)
    const kept = recent.lists.get(name) ?? make()
    // Put last again, so that the first is the one that was not asked for longest.
    recent.lists.delete(name)
    recent.lists.set(name, kept)
    for (const oldest of recent.lists.keys()) if (recent.lists.size > mostKept) recent.lists.delete(oldest)
    try {
      const list = await kept
      return readCatalogueVersion(database) === version ? list : this.read(database, name, make)
    } catch (thrown) {
      recent.lists.delete(name)
      throw thrown
    }
  }

  #recent(database: ReadableDatabase, version: number): Recent<List> {
    const known = this.#ofDatabases.get(database)
    if (known?.version === version) return known
    const fresh = { version, lists: new Map<string, Promise<List>>() }
    this.#ofDatabases.set(database, fresh)
    return fresh
  }
}

interface Recent<List> {
  readonly version: number
  readonly lists: Map<string, Promise<List>>
}

/** A person compares a part with another; thousands of models each. */
const mostKept = 4
