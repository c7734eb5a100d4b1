import { appendFileSync } from 'node:fs'
import os from 'node:os'
import { v7 as newUuid } from 'uuid'
import type { Surroundings } from '../application.ts'
import type { DefectLog } from '../requests/dispatch.ts'
import type { EngineSettings } from './engine-protocol.ts'
import { startKeepIndexThread } from './start-keep-index.ts'

/** The real world for the application: this machine's clock, its name, and a place for defects to be written down. */
export function surroundingsOf(settings: EngineSettings): Surroundings {
  return {
    ...settings,
    now: () => new Date(),
    newId: () => newUuid(),
    homeFolder: os.homedir(),
    logDefect: logDefectBeside(settings.databaseFile),
    // A database in memory is nobody else's to open.
    ...(settings.databaseFile !== ':memory:' && { layOutIndex: startKeepIndexThread }),
  }
}

/** Writes defects beside the shop's file, so that a quoted reference can be found days later, and to standard error. */
function logDefectBeside(databaseFile: string): DefectLog {
  return (reference, request, defect) => {
    const account = defect instanceof Error ? (defect.stack ?? defect.message) : String(defect)
    const entry = `${new Date().toISOString()} ${reference} ${request}\n${account}\n`
    process.stderr.write(entry)
    if (databaseFile === ':memory:') return
    try {
      appendFileSync(`${databaseFile}.defects.log`, entry)
    } catch {
      // The folder may be the very thing that is broken; standard error has the entry.
    }
  }
}
