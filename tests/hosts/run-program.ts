import { type ChildProcess, spawn } from 'node:child_process'
import path from 'node:path'

const programFolder = path.join(import.meta.dirname, '../..')

export interface Ran {
  readonly code: number | null
  readonly stdout: string
  readonly stderr: string
}

/** Runs the command line as a script would: a process of its own, its two outputs apart. */
export function runTallyplate(
  given: readonly string[],
  environment: Record<string, string> = {},
): Promise<Ran> {
  return start('electron/hosts/command-line.ts', given, environment).ended
}

export interface Running {
  readonly ended: Promise<Ran>
  /** Settles with what the program has printed as soon as that matches; fails when it ends before. */
  readonly printed: (pattern: RegExp) => Promise<RegExpMatchArray>
  readonly interrupt: () => void
  readonly kill: () => void
}

const running = new Set<ChildProcess>()

/** Ends what a test that failed half way has left running. */
export function killStragglers(): void {
  for (const child of running) child.kill('SIGKILL')
}

/** Starts a program of ours that goes on until it is interrupted. */
export function start(
  script: string,
  given: readonly string[],
  environment: Record<string, string> = {},
): Running {
  const child = spawn(process.execPath, [path.join(programFolder, script), ...given], {
    env: { ...process.env, NODE_ENV: 'test', ...environment },
    stdio: ['ignore', 'pipe', 'pipe'],
  })
  running.add(child)
  child.once('close', () => running.delete(child))
  const said = { stdout: '', stderr: '' }
  child.stdout.setEncoding('utf8').on('data', text => {
    said.stdout += text
  })
  child.stderr.setEncoding('utf8').on('data', text => {
    said.stderr += text
  })
  const ended = new Promise<Ran>(resolve => {
    child.once('close', code => resolve({ code, ...said }))
  })
  return {
    ended,
    printed: pattern =>
      new Promise((resolve, reject) => {
        const look = () => {
          const match = pattern.exec(said.stdout)
          if (match !== null) resolve(match)
        }
        look()
        child.stdout.on('data', look)
        void ended.then(({ code, stderr }) =>
          reject(new Error(`the program ended with ${code} before it printed ${pattern}: ${stderr}`)),
        )
      }),
    interrupt: () => child.kill('SIGINT'),
    kill: () => child.kill('SIGKILL'),
  }
}
