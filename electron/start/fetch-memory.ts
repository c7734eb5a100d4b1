import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { z } from 'zod'

/** One installation: this checkout with this version of Electron. */
export interface Installation {
  readonly folder: string
  readonly version: string
}

const failures = z.array(z.object({ folder: z.string(), version: z.string(), why: z.string() }))

/** Remembers in the user's data folder that fetching Electron failed, so that later starts do not wait for it again. */
export class FetchMemory {
  readonly #file: string

  constructor(dataFolder: string) {
    this.#file = path.join(dataFolder, 'electron-fetch.json')
  }

  readFailure(installation: Installation): string | undefined {
    return this.#read().find(failure => isSame(failure, installation))?.why
  }

  noteFailure(installation: Installation, why: string): void {
    const others = this.#read().filter(failure => !isSame(failure, installation))
    mkdirSync(path.dirname(this.#file), { recursive: true, mode: 0o700 })
    writeFileSync(this.#file, JSON.stringify([...others, { ...installation, why }], undefined, 2))
  }

  forgetFailure(installation: Installation): void {
    const others = this.#read().filter(failure => !isSame(failure, installation))
    if (others.length === 0) rmSync(this.#file, { force: true })
    else writeFileSync(this.#file, JSON.stringify(others, undefined, 2))
  }

  #read(): z.infer<typeof failures> {
    try {
      return failures.parse(JSON.parse(readFileSync(this.#file, 'utf8')))
    } catch {
      // No note, or one that cannot be read: nothing is known to have failed.
      return []
    }
  }
}

function isSame(one: Installation, other: Installation): boolean {
  return one.folder === other.folder && one.version === other.version
}
