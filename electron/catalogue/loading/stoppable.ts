import type { Progress, Task } from '../../requests/handlers.ts'
import { Refusal } from '../../requests/refusal.ts'

export interface Stoppable {
  /** Runs work that tells now and then how far it has come; there it ends once it is to stop. */
  run<Value>(task: Task, work: (told: Task) => Promise<Value>): Promise<Value>
  /** Says whether there was anything to stop. */
  stop(): boolean
  /** What was told last, and whether it was asked to stop since; null while there is no work. */
  told(): { readonly progress: Progress; readonly isStopping: boolean } | null
}

/** Work that a person may stop. It ends with a `Refusal`, and its transaction leaves nothing behind. */
export function stoppable(): Stoppable {
  let isRunning = false
  let isToStop = false
  let last = nothingYet
  return {
    async run(task, work) {
      isRunning = true
      isToStop = false
      last = nothingYet
      try {
        return await work({
          report: progress => {
            if (isToStop) throw new Refusal({ code: 'load-stopped' })
            last = progress
            task.report(progress)
          },
        })
      } finally {
        isRunning = false
      }
    },
    stop() {
      isToStop = isRunning
      return isRunning
    },
    told: () => (isRunning ? { progress: last, isStopping: isToStop } : null),
  }
}

const nothingYet: Progress = { what: '', done: 0, expected: 0 }
