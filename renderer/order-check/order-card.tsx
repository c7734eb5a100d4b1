import { type KeyboardEvent, useCallback } from 'react'
import { KeyHint } from '../components/key-hint.tsx'
import { ProblemNote } from '../components/problem-note.tsx'
import { useLasting } from '../components/use-lasting.ts'
import { OrderLineRow } from './order-line-row.tsx'
import { wordOrder } from './order-words.ts'
import type { AnsweredOrder, OrderCheck } from './use-order-check.ts'

interface OrderCardProps {
  readonly order: OrderCheck
  readonly outcome: string
  readonly onNextStop: () => void
  readonly onCopy: () => void
  readonly onSave: () => void
}

/** What was found: what the order comes to, then every line of it. */
export function OrderCard({ order, outcome, onNextStop, onCopy, onSave }: OrderCardProps) {
  const { answer, answered, draft } = order
  const isWaiting = useLasting(answer.isFetching)
  return (
    <section className="order-card" aria-label="What was found">
      {answer.error !== null && draft.asked !== null && (
        <ProblemNote
          problem={answer.error}
          kept="The order in the field is kept."
          onRetry={() => void answer.refetch()}
        />
      )}
      {isWaiting && <p className="card__waiting">Checking…</p>}
      {draft.asked === null && <EmptyOrder />}
      {answered !== undefined && (
        <>
          <h2 className="order-card__sentence">{wordOrder(answered.checked)}</h2>
          <div className="order-card__actions">
            {answered.checked.stops > 0 && (
              <button type="button" className="order-button" aria-keyshortcuts="F2" onClick={onNextStop}>
                Next stop <KeyHint>F2</KeyHint>
              </button>
            )}
            <button type="button" className="order-button" aria-keyshortcuts="F8" onClick={onCopy}>
              Copy checked CSV <KeyHint>F8</KeyHint>
            </button>
            <button type="button" className="order-button" aria-keyshortcuts="F10" onClick={onSave}>
              Save it <KeyHint>F10</KeyHint>
            </button>
            <p className="order-card__outcome" role="status">
              {outcome}
            </p>
          </div>
          <OrderLines order={order} answered={answered} />
        </>
      )}
    </section>
  )
}

function EmptyOrder() {
  return (
    <div className="order-card__empty">
      <h2 className="order-card__sentence">Paste the order to check it before it is sent.</h2>
      <p>
        Every line is looked at for fit, replaced numbers, packs and minimums, doubles, and what is here
        already. A line without a model number is taken to be for stock.
      </p>
    </div>
  )
}

interface OrderLinesProps {
  readonly order: OrderCheck
  readonly answered: AnsweredOrder
}

function OrderLines({ order: { draft, step, answer }, answered }: OrderLinesProps) {
  const { refetch } = answer
  const onRecorded = useCallback(
    (line: number) => {
      focusLine(line)
      void refetch()
    },
    [refetch],
  )
  return (
    <ul className="order-lines" onKeyDown={stepThroughLines}>
      {answered.checked.lines.map((line, at) => {
        const isOpen = draft.openLine === line.line
        const given = answered.given[at]
        return (
          given !== undefined && (
            <OrderLineRow
              key={line.line}
              line={line}
              given={given}
              supplier={draft.asked?.supplier ?? ''}
              isOpen={isOpen}
              initials={isOpen ? draft.initials : ''}
              step={step}
              onRecorded={onRecorded}
            />
          )
        )
      })}
    </ul>
  )
}

/** Up and down go from line to line; inside an opened one they are the fields'. */
function stepThroughLines(event: KeyboardEvent<HTMLUListElement>): void {
  if (event.key !== 'ArrowDown' && event.key !== 'ArrowUp') return
  const lines = [...event.currentTarget.querySelectorAll<HTMLElement>('[data-order-line]')]
  const at = lines.findIndex(line => line.matches(':focus'))
  if (at < 0) return
  event.preventDefault()
  lines[event.key === 'ArrowDown' ? at + 1 : at - 1]?.focus()
}

export function focusLine(line: number): void {
  document.querySelector<HTMLElement>(`[data-order-line="${line}"]`)?.focus()
}
