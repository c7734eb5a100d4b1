import type { Reply } from '../../shared-schemas/request.ts'
import type { EngineAnswer, EngineClosing, EngineQuestion } from './engine-protocol.ts'

/** How messages reach an engine and come back, whichever kind of process or thread it runs in. */
export interface EngineLink {
  readonly send: (message: EngineQuestion | EngineClosing) => void
  readonly onAnswer: (take: (answer: EngineAnswer) => void) => void
  /** Called once, with the reason, when the engine is no more. */
  readonly onEnd: (take: (why: string) => void) => void
}

export interface Engine {
  /** Always replies: a dead engine with `unexpected`. */
  readonly ask: (name: string, input: unknown) => Promise<Reply>
  /** Closes the database in order. Settles when the engine is no more. */
  readonly close: () => Promise<void>
}

export interface EngineWatch {
  readonly newReference: () => string
  /** The engine ended though nobody had bidden it to. */
  readonly onDeath: (why: string, reference: string) => void
}

/** The asking side of the engine. Every question gets its reply, even when the engine dies under it. */
export function connectEngine(link: EngineLink, { newReference, onDeath }: EngineWatch): Engine {
  const waiting = new Map<number, (reply: Reply) => void>()
  const ended = Promise.withResolvers<void>()
  let lastId = 0
  let deadReply: Reply | undefined
  let isClosing = false

  link.onAnswer(({ id, reply }) => {
    waiting.get(id)?.(reply)
    waiting.delete(id)
  })
  link.onEnd(why => {
    const reference = newReference()
    const reply: Reply = { ok: false, problem: { code: 'unexpected', reference } }
    deadReply = reply
    for (const answer of waiting.values()) answer(reply)
    waiting.clear()
    ended.resolve()
    if (!isClosing) onDeath(why, reference)
  })

  return {
    ask: (name, input) =>
      new Promise(resolve => {
        if (deadReply !== undefined) return resolve(deadReply)
        lastId += 1
        waiting.set(lastId, resolve)
        link.send({ id: lastId, name, input })
      }),
    close: () => {
      isClosing = true
      if (deadReply === undefined) link.send({ close: true })
      return ended.promise
    },
  }
}
