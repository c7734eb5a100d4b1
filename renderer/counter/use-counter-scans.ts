import { useEffect, useRef, useState } from 'react'
import { AskProblem } from '../bridge/ask-problem.ts'
import { ask } from '../bridge/client.ts'
import { useScanned } from '../scanning/use-scanned.ts'
import type { Counter } from './use-counter.ts'

/** A number scanned off a rating plate. Each scan is one of its own, though the number may be the same. */
export interface PlateScan {
  readonly text: string
}

/**
 * What is scanned at the counter: a part is the part in the hand, wherever the focus is; a code that no part has and that
 * a model has is the number on the plate; the undo label puts back what stood there before.
 */
export function useCounterScans({ enquiry, step }: Counter) {
  const [plateScan, setPlateScan] = useState<PlateScan | null>(null)
  const current = useRef(enquiry)
  useEffect(() => {
    current.current = enquiry
  })
  const undoing = useRef<(() => string)[]>([])
  const scanned = useScanned({
    onPart: ({ partNumber, description }) => {
      const before = current.current.part
      undoing.current.push(() => {
        step({ do: 'type-part', part: before })
        return before === ''
          ? 'Taken back: no part is in the hand.'
          : `Taken back: ${before} is in the hand again.`
      })
      step({ do: 'type-part', part: partNumber })
      return `In the hand: ${partNumber}. ${description}`
    },
    onLocation: ({ name }) => {
      throw new Error(
        `${name} is a place. The Counter takes parts and plates; Shelves shows what lies there.`,
      )
    },
    onUndo: () => {
      const undo = undoing.current.pop()
      if (undo === undefined) throw new Error('Nothing was scanned here that could be taken back.')
      return undo()
    },
    onUnknown: async code => {
      if (!(await isOfModel(code))) return undefined
      const before = current.current.text
      undoing.current.push(() => {
        step({ do: 'type-plate', text: before })
        return 'Taken back: the plate is as it was.'
      })
      step({ do: 'type-plate', text: code })
      setPlateScan({ text: code })
      return `On the plate: ${code}.`
    },
  })
  return { ...scanned, plateScan }
}

/** Whether some model has this number, as it is or as part of its own; too little to look up is no model's. */
async function isOfModel(code: string): Promise<boolean> {
  if (code.trim().length < leastOfPlate) return false
  try {
    const { outcome } = await ask('model-lookup.find-models', { text: code, top: 1 })
    return outcome === 'exact' || outcome === 'several'
  } catch (thrown) {
    // Without its labels and ratings too little of it is left to look up.
    if (thrown instanceof AskProblem) return false
    throw thrown
  }
}

const leastOfPlate = 4
