import { useEffect, useRef } from 'react'
import { flushSync } from 'react-dom'
import { focusAndSelect } from '../components/focus-and-select.ts'
import { type NamedScreen, TopLine } from '../components/top-line.tsx'
import { useScreenKeys } from '../components/use-screen-keys.ts'
import { useHanded } from '../hand-over.ts'
import { ScanLine } from '../scanning/scan-line.tsx'
import { useScanned } from '../scanning/use-scanned.ts'
import { addScannedLine } from './add-scanned-line.ts'
import { addToDraft } from './add-to-draft.ts'
import { focusLine, OrderCard } from './order-card.tsx'
import { OrderField } from './order-field.tsx'
import { nextStop, wordOrder } from './order-words.ts'
import { useCheckedCsv } from './use-checked-csv.ts'
import { type OrderCheck, useOrderCheck } from './use-order-check.ts'

/** The check of a draft order: the order on the left, what was found on the right. */
export function OrderScreen({ screens }: { readonly screens: readonly NamedScreen[] }) {
  const order = useOrderCheck()
  const field = useRef<HTMLTextAreaElement>(null)
  const picker = useRef<HTMLInputElement>(null)
  const { outcome, copy, save } = useCheckedCsv(order.csv)
  const { draft, step, answered } = order
  const onCopy = () => void copy()
  const onNextStop = () => {
    const stopped = answered && nextStop(answered.checked.lines, draft.openLine)
    if (stopped === undefined) return
    // The line is focused once it is unfolded, so that all of it comes into view.
    flushSync(() => step({ do: 'open-line', line: stopped.line }))
    focusLine(stopped.line)
  }
  useScreenKeys({
    Escape: () => focusAndSelect(field.current),
    F2: onNextStop,
    F6: () => picker.current?.click(),
    F8: onCopy,
    F9: () => step({ do: 'check' }),
    F10: save,
  })
  useEffect(() => focusAndSelect(field.current), [])
  useHanded('Order check', ({ lines }) =>
    step({ do: 'take', text: lines.reduce(addToDraft, draft.text), name: draft.name }),
  )
  const { note, take } = useScannedLines(order)

  return (
    <div className="counter">
      <TopLine screens={screens} shop={order.shop} />
      <main className="order-bench">
        <h1 className="unseen">Order check</h1>
        {note !== null && (
          <div className="order-bench__scan">
            <ScanLine note={note} onAttached={take} />
          </div>
        )}
        <OrderField order={order} field={field} picker={picker} />
        <OrderCard order={order} outcome={outcome} onNextStop={onNextStop} onCopy={onCopy} onSave={save} />
        <p className="unseen" role="status">
          {answered === undefined ? '' : wordOrder(answered.checked)}
        </p>
      </main>
    </div>
  )
}

/** A scanned part is a line of the order, or one more of its last line; the undo label takes the last scan out again. */
function useScannedLines({ draft, step }: OrderCheck) {
  // Scans follow each other faster than a state is drawn.
  const text = useRef(draft.text)
  const before = useRef<{ readonly was: string; readonly became: string }[]>([])
  useEffect(() => {
    text.current = draft.text
  })
  const write = (changed: string) => {
    text.current = changed
    step({ do: 'type', text: changed })
  }
  return useScanned({
    onPart: ({ partNumber, pieces, description }) => {
      const was = text.current
      const became = addScannedLine(was, partNumber, pieces)
      before.current.push({ was, became })
      write(became)
      return `${partNumber} is on the order. ${description}`
    },
    onLocation: ({ name }) => {
      throw new Error(`${name} is a place. An order takes parts; Shelves shows what lies there.`)
    },
    onUndo: () => {
      const last = before.current.pop()
      if (last === undefined || last.became !== text.current)
        throw new Error('The order was changed since the last scan. Mend the line in the field.')
      write(last.was)
      return 'Taken back: the last scan is not on the order.'
    },
  })
}
