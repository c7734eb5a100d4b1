import { readFileSync, rmSync, writeFileSync } from 'node:fs'
import { z } from 'zod'
import { Refusal } from '../requests/refusal.ts'

/** Which browser host serves a shop's file. `secret` proves that whoever answers on the port is that very host. */
const instance = z.object({ pid: z.int(), port: z.int(), secret: z.string() })
export type Instance = z.infer<typeof instance>

/** Where a host answers for itself. */
export const instancePath = '/instance/'

/**
 * Refuses a second browser host on one file. A note whose host no longer answers is stale and is taken over.
 * The command line takes no notice: SQLite lets it work on the same file meanwhile.
 */
export async function refuseSecondInstance(databaseFile: string): Promise<void> {
  const noted = readNote(databaseFile)
  if (noted !== undefined && (await isAnswering(noted)))
    throw new Refusal({ code: 'already-running', file: databaseFile, pid: noted.pid, port: noted.port })
  rmSync(noteFile(databaseFile), { force: true })
}

/** Notes this host beside the file. Only one of two that start at once can make the note; the other is refused. */
export async function noteInstance(databaseFile: string, own: Instance): Promise<void> {
  try {
    writeFileSync(noteFile(databaseFile), JSON.stringify(own), { flag: 'wx', mode: 0o600 })
  } catch (thrown) {
    if (!isTaken(thrown)) throw thrown
    await refuseSecondInstance(databaseFile)
    writeFileSync(noteFile(databaseFile), JSON.stringify(own), { flag: 'wx', mode: 0o600 })
  }
}

/** Takes the note away again, unless another host has taken over since. */
export function removeNote(databaseFile: string, own: Instance): void {
  if (readNote(databaseFile)?.secret === own.secret) rmSync(noteFile(databaseFile), { force: true })
}

async function isAnswering({ port, secret }: Instance): Promise<boolean> {
  try {
    const answer = await fetch(`http://127.0.0.1:${port}${instancePath}${secret}`, {
      signal: AbortSignal.timeout(answerWithinMilliseconds),
    })
    return answer.status === 204
  } catch {
    return false
  }
}

/** A live host answers this from its own thread at once, however busy its engine is. */
const answerWithinMilliseconds = 2000

function readNote(databaseFile: string): Instance | undefined {
  try {
    return instance.parse(JSON.parse(readFileSync(noteFile(databaseFile), 'utf8')))
  } catch {
    // No note, or not one that can be read: nobody is there to be asked.
    return undefined
  }
}

function noteFile(databaseFile: string): string {
  return `${databaseFile}.host.json`
}

function isTaken(thrown: unknown): boolean {
  return (thrown as NodeJS.ErrnoException).code === 'EEXIST'
}
