import { EventEmitter } from 'node:events'

/** Loaded first in a forked engine: gives it `process.parentPort`, as Electron's utility process has it. */
class ParentPort extends EventEmitter {
  postMessage(message: unknown): void {
    process.send?.(message)
  }
}

const port = new ParentPort()
process.on('message', data => port.emit('message', { data, ports: [] }))
Object.defineProperty(process, 'parentPort', { value: port })
