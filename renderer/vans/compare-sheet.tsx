import { useMutation } from '@tanstack/react-query'
import { type KeyboardEvent, useState } from 'react'
import { KeyHint } from '../components/key-hint.tsx'
import { useScreenKeys } from '../components/use-screen-keys.ts'
import { isOff, listOpen, wordComparison } from './count-words.ts'
import { listChoices } from './list-choices.ts'
import type { Count } from './use-count.ts'
import { VarianceLine } from './variance-line.tsx'

interface CompareSheetProps {
  readonly count: Count
  readonly onLeave: () => void
  /** For a van: what brings it back to its list. */
  readonly onTopUp: (() => void) | undefined
}

/** The count beside the book: what is off, what may explain it, and the posting of it. */
export function CompareSheet({ count, onLeave, onTopUp }: CompareSheetProps) {
  const { sheet, setStage, post, explain, recount } = count
  const [isWarned, setWarned] = useState(false)
  const posting = useMutation({ mutationFn: post, networkMode: 'always' })
  const data = sheet.data
  const lines = data?.lines ?? []
  const [off, open] = [lines.filter(isOff), listOpen(lines)]
  const notCounted = lines.filter(({ counted }) => counted === null)
  const isPosted = data?.postedAt != null
  const tryPosting = () => {
    if (isPosted || posting.isPending || sheet.isFetching) return
    if (open.length > 0 && !isWarned) setWarned(true)
    else posting.mutate()
  }
  const goToOpen = () => {
    const [first] = open
    if (first !== undefined) focusVariance(first.partNumber)
  }
  useScreenKeys(isPosted ? {} : { F6: goToOpen, F10: tryPosting })
  return (
    <section className="compare" aria-labelledby="compare">
      <h2 id="compare" className="stock-sentence">
        <span className="number">{data?.location}</span>.{' '}
        {wordComparison(lines, data?.recordAccuracy ?? null)}
      </h2>
      <p className="stock-print-only">
        {isPosted ? `Posted ${data.postedAt?.slice(0, 10)}.` : 'Not posted yet.'}
        {data !== undefined && data.initials !== '' && ` Counted by ${data.initials}.`}
      </p>
      {posting.data !== undefined && (
        <p className="stock-done" role="status">
          Posted. {posting.data.movements} {posting.data.movements === 1 ? 'movement' : 'movements'} made;
          found {posting.data.valueGained}, missing {posting.data.valueLost}. The book is as counted.
        </p>
      )}
      <p className="stock-acts">
        {!isPosted && (
          <>
            <button
              type="button"
              className="order-button order-button--main"
              aria-keyshortcuts="F10"
              data-first-field
              onClick={tryPosting}
            >
              {isWarned && open.length > 0 ? 'Post all the same' : 'Post'} <KeyHint>F10</KeyHint>
            </button>
            {open.length > 0 && (
              <button type="button" className="order-button" aria-keyshortcuts="F6" onClick={goToOpen}>
                Next without a reason <KeyHint>F6</KeyHint>
              </button>
            )}
            <button
              type="button"
              className="order-button"
              aria-keyshortcuts="F9"
              onClick={() => setStage('count')}
            >
              Count on <KeyHint>F9</KeyHint>
            </button>
          </>
        )}
        <button type="button" className="order-button" aria-keyshortcuts="F8" onClick={() => window.print()}>
          Print the report <KeyHint>F8</KeyHint>
        </button>
        <button
          type="button"
          className="order-button"
          data-first-field={isPosted || undefined}
          onClick={onLeave}
        >
          {isPosted ? 'Another count' : 'Go on later'}
        </button>
        {isPosted && onTopUp !== undefined && (
          <button type="button" className="order-button" onClick={onTopUp}>
            Top up the van
          </button>
        )}
      </p>
      {isWarned && !isPosted && open.length > 0 && (
        <p className="problem-note" role="alert">
          {open.length} {open.length === 1 ? 'line has' : 'lines have'} no reason yet and would be booked as
          lost or found. F6 goes to {open.length === 1 ? 'it' : 'the first'}; F10 posts all the same.
        </p>
      )}
      {(posting.error ?? sheet.error) !== null && (
        <p className="problem-note" role="alert">
          {(posting.error ?? sheet.error)?.message}
        </p>
      )}
      <ul className="variances" onKeyDown={stepThrough}>
        {off.map(line => (
          <VarianceLine
            key={line.partNumber}
            line={line}
            choices={listChoices(line, lines).slice(0, 9)}
            isPosted={isPosted}
            onExplain={chosen => explain(line, chosen)}
            onRecount={() => recount(line.partNumber)}
          />
        ))}
      </ul>
      {notCounted.length > 0 && !isPosted && (
        <p>
          {notCounted.length} {notCounted.length === 1 ? 'line was' : 'lines were'} not counted and{' '}
          {notCounted.length === 1 ? 'stays' : 'stay'} as booked:{' '}
          <span className="number">{notCounted.map(({ partNumber }) => partNumber).join(', ')}</span>
        </p>
      )}
    </section>
  )
}

/** Up and down go from line to line. */
function stepThrough(event: KeyboardEvent<HTMLUListElement>): void {
  if (event.key !== 'ArrowDown' && event.key !== 'ArrowUp') return
  const lines = [...event.currentTarget.querySelectorAll<HTMLElement>('[data-variance]')]
  const at = lines.findIndex(line => line.contains(document.activeElement))
  const next = lines[event.key === 'ArrowDown' ? at + 1 : at - 1]
  if (at < 0 || next === undefined) return
  event.preventDefault()
  focusWithin(next)
}

function focusVariance(part: string): void {
  const line = document.querySelector<HTMLElement>(`[data-variance="${CSS.escape(part)}"]`)
  if (line !== null) focusWithin(line)
}

function focusWithin(line: HTMLElement): void {
  line.querySelector<HTMLElement>('button')?.focus()
}
