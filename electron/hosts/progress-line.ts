import type { Progress } from '../requests/handlers.ts'

/** Shows how long work comes along: one line written over again on a terminal, one line a step into a file. */
export function progressLine(stream: NodeJS.WriteStream): { show(progress: Progress): void; clear(): void } {
  let shown = ''
  return {
    show({ what, done, expected }) {
      const line = stream.isTTY ? `${what}${writeDone(done, expected)}` : what
      if (line === shown || what === '') return
      shown = line
      stream.write(stream.isTTY ? `\r\u001b[K${line}` : `${line}\n`)
    },
    clear() {
      if (stream.isTTY && shown !== '') stream.write('\r\u001b[K')
      shown = ''
    },
  }
}

function writeDone(done: number, expected: number): string {
  if (expected > 0) return ` ${Math.min(100, Math.floor((100 * done) / expected))} %`
  return done > 0 ? ` ${done}` : ''
}
