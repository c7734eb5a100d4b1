import type { Task } from '../../requests/handlers.ts'
import { Refusal } from '../../requests/refusal.ts'

interface Stoppable {
  /** Runs work that tells now and then how far it has come; there it ends once it is to stop. */
  run<Value>(task: Task, work: (told: Task) => Promise<Value>): Promise<Value>
  /** Says whether there was anything to stop. */
  stop(): boolean
}

/** Work that a person may stop. It ends with a `Refusal`, and its transaction leaves nothing behind. */
export function stoppable(): Stoppable {
  let isRunning = false
  let isToStop = false
  return {
    async run(task, work) {
      isRunning = true
      isToStop = false
      try {
        return await work({
          report: progress => {
            if (isToStop) throw new Refusal({ code: 'load-stopped' })
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
  }
}
