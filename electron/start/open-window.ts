import { spawn } from 'node:child_process'
import { untilInterrupted } from '../hosts/interruption.ts'

export type WindowEnd =
  | { readonly kind: 'closed'; readonly code: number }
  /** Electron could not even begin here: a library it needs is missing, or the system stopped it. */
  | { readonly kind: 'never-opened'; readonly why: string }

export interface WindowOpening {
  readonly electron: string
  readonly programFolder: string
  readonly databaseFile: string
}

/** Opens Electron's window and waits until it is closed. */
export async function openWindow({
  electron,
  programFolder,
  databaseFile,
}: WindowOpening): Promise<WindowEnd> {
  const child = spawn(electron, [programFolder], {
    stdio: 'inherit',
    env: { ...process.env, TALLYPLATE_FILE: databaseFile },
  })
  void untilInterrupted().then(() => child.kill('SIGTERM'))
  return new Promise(resolve => {
    child.once('error', error => resolve({ kind: 'never-opened', why: error.message }))
    child.once('exit', (code, signal) => resolve(readEnd(code, signal)))
  })
}

/** A shell's and the system's words for a program that did not begin; anything else is the program's own. */
export function readEnd(code: number | null, signal: NodeJS.Signals | null): WindowEnd {
  if (code === 126 || code === 127) return { kind: 'never-opened', why: `exit code ${code}` }
  if (signal === 'SIGTRAP' || signal === 'SIGABRT') return { kind: 'never-opened', why: signal }
  return { kind: 'closed', code: code ?? 0 }
}
