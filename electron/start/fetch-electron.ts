import { spawn } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { readdir, stat } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'

export interface Fetching {
  /** Electron's own installer. */
  readonly installer: string
  readonly showMegabytes: (arrived: number) => void
  readonly limits: FetchLimits
}

export interface FetchLimits {
  readonly stalledAfterSeconds: number
  readonly atMostSeconds: number
}

export type Fetched = { readonly ok: true } | { readonly ok: false; readonly why: string }

/** Given up when nothing more arrives for a while, and in any case after some minutes. */
export const usualLimits: FetchLimits = { stalledAfterSeconds: 30, atMostSeconds: 300 }

/** Has Electron's own installer fetch Electron, showing how much has arrived. Bounded in time; a refusal ends it at once. */
export async function fetchElectron({ installer, showMegabytes, limits }: Fetching): Promise<Fetched> {
  const arriving = mkdtempSync(path.join(os.tmpdir(), 'tallyplate-electron-'))
  // The installer downloads into the system's temporary folder; one of its own tells how much has arrived.
  const environment = { ...process.env, TMPDIR: arriving, TEMP: arriving, TMP: arriving }
  const child = spawn(process.execPath, [installer], {
    env: environment,
    stdio: ['ignore', 'ignore', 'pipe'],
  })
  let said = ''
  child.stderr.setEncoding('utf8').on('data', text => {
    said += text
  })
  const outcome = Promise.withResolvers<Fetched>()
  child.once('error', error => outcome.resolve({ ok: false, why: error.message }))
  child.once('close', code =>
    outcome.resolve(code === 0 ? { ok: true } : { ok: false, why: firstLine(said) }),
  )
  const watch = watchArrival(arriving, limits, {
    show: bytes => showMegabytes(Math.round(bytes / 1e6)),
    giveUp: why => {
      outcome.resolve({ ok: false, why })
      child.kill('SIGKILL')
    },
  })
  try {
    return await outcome.promise
  } finally {
    clearInterval(watch)
    rmSync(arriving, { recursive: true, force: true })
  }
}

function watchArrival(
  folder: string,
  { stalledAfterSeconds, atMostSeconds }: FetchLimits,
  { show, giveUp }: { readonly show: (bytes: number) => void; readonly giveUp: (why: string) => void },
): NodeJS.Timeout {
  const startedAt = performance.now()
  let arrived = 0
  let grewAt = startedAt
  return setInterval(async () => {
    const bytes = await sumSizes(folder)
    const now = performance.now()
    if (bytes > arrived) grewAt = now
    arrived = bytes
    show(bytes)
    if (now - grewAt > stalledAfterSeconds * 1000) giveUp(`nothing arrived for ${stalledAfterSeconds} s`)
    else if (now - startedAt > atMostSeconds * 1000) giveUp(`it took longer than ${atMostSeconds} s`)
  }, 500)
}

async function sumSizes(folder: string): Promise<number> {
  const names = await readdir(folder, { recursive: true }).catch(() => [])
  const sizes = await Promise.all(
    names.map(name =>
      stat(path.join(folder, name)).then(
        ({ size }) => size,
        () => 0,
      ),
    ),
  )
  return sizes.reduce((sum, size) => sum + size, 0)
}

/** What an installer says first is what went wrong; the rest is where in its own code. */
function firstLine(said: string): string {
  const line = said.split('\n').find(candidate => candidate.trim() !== '') ?? 'its installer gave no reason'
  return line
    .trim()
    .replace(/^\w*Error: /, '')
    .slice(0, 160)
}
