import { useMutation } from '@tanstack/react-query'
import { type FormEvent, type KeyboardEvent, useId, useState } from 'react'
import type { CountLine, Explanation } from '../../shared-schemas/van-counts.ts'
import { KeyHint } from '../components/key-hint.tsx'
import { unlessScanned } from '../scanning/use-scans.ts'
import { wordVariance } from './count-words.ts'

interface VarianceLineProps {
  readonly line: CountLine
  /** What may explain it, the likeliest first. */
  readonly choices: readonly Explanation[]
  readonly isPosted: boolean
  readonly onExplain: (chosen: Explanation) => Promise<void>
  readonly onRecount: () => void
}

/** One line that is off: by how much, what it was put down to, and what may explain it, each taken by one key. */
export function VarianceLine({ line, choices, isPosted, onExplain, onRecount }: VarianceLineProps) {
  const [isAsking, setAsking] = useState(false)
  const explain = useMutation({
    mutationFn: onExplain,
    networkMode: 'always',
    onSuccess: () => setAsking(false),
  })
  const onKeyDown = (event: KeyboardEvent) => {
    if (
      isPosted ||
      event.target instanceof HTMLInputElement ||
      event.ctrlKey ||
      event.altKey ||
      event.metaKey
    )
      return
    const chosen = choices[Number(event.key) - 1]
    const key = event.key.toUpperCase()
    if (chosen === undefined && key !== 'C' && key !== 'O') return
    event.preventDefault()
    // The first key of a scan looks like one that was pressed: it must choose nothing.
    unlessScanned(() => {
      if (chosen !== undefined) explain.mutate(chosen)
      else if (key === 'C') onRecount()
      else setAsking(true)
    })
  }
  return (
    <li
      className="variance"
      data-variance={line.partNumber}
      data-settled={line.settled !== null || undefined}
      onKeyDown={onKeyDown}
    >
      <p className="variance__line">
        <span className="number stock-number">{line.partNumber}</span>{' '}
        <span>{line.description === '' ? line.family : line.description}</span>{' '}
        {line.bin !== null && (
          <span className="quiet">
            bin <span className="number">{line.bin}</span>
          </span>
        )}
      </p>
      <p className="variance__by">
        <strong>{wordVariance(line)}</strong>
        {line.toRecount && line.settled === null && !isPosted && ' Count it once more.'}
      </p>
      {(line.settled !== null || isPosted) && (
        <p className="variance__settled">
          Put down as {line.settled?.text ?? ((line.variance ?? 0) < 0 ? 'lost' : 'found')}.
        </p>
      )}
      {!isPosted && (
        <div className="variance__choices">
          {choices.map((choice, at) => (
            <button
              key={`${choice.kind} ${choice.detail}`}
              type="button"
              className="variance__choice"
              aria-keyshortcuts={`${at + 1}`}
              aria-pressed={choice.kind === line.settled?.kind && choice.detail === line.settled.detail}
              onClick={() => explain.mutate(choice)}
            >
              <KeyHint>{`${at + 1}`}</KeyHint> {choice.text}
            </button>
          ))}
          <button
            type="button"
            className="variance__choice"
            aria-keyshortcuts="O"
            onClick={() => setAsking(true)}
          >
            <KeyHint>O</KeyHint> {choices.length === 0 ? 'Say why' : 'Another reason'}
          </button>
          <button type="button" className="variance__choice" aria-keyshortcuts="C" onClick={onRecount}>
            <KeyHint>C</KeyHint> Count again
          </button>
        </div>
      )}
      {isAsking && !isPosted && (
        <OtherReason
          isShort={(line.variance ?? 0) < 0}
          onReason={reason => explain.mutate(reason)}
          onLeave={() => setAsking(false)}
        />
      )}
      {explain.error !== null && (
        <p className="problem-note" role="alert">
          {explain.error.message}
        </p>
      )}
    </li>
  )
}

interface OtherReasonProps {
  readonly isShort: boolean
  readonly onReason: (reason: Explanation) => void
  readonly onLeave: () => void
}

/** A reason in the person's own words; without words it is a plain loss or find. A job may be named instead. */
function OtherReason({ isShort, onReason, onLeave }: OtherReasonProps) {
  const id = useId()
  const [words, setWords] = useState('')
  const [job, setJob] = useState('')
  const onSubmit = (event: FormEvent) => {
    event.preventDefault()
    if (isShort && job.trim() !== '') onReason({ kind: 'job-line', detail: job.trim(), text: '' })
    else onReason({ kind: isShort ? 'loss' : 'find', detail: words.trim(), text: '' })
  }
  return (
    <form
      className="stock-form"
      aria-label="Another reason"
      onSubmit={onSubmit}
      onKeyDown={event => {
        if (event.key !== 'Escape') return
        event.stopPropagation()
        onLeave()
      }}
    >
      <div className="stock-form__field">
        <label htmlFor={`${id}-words`}>
          {isShort ? 'Lost: how, if you know' : 'Found: how, if you know'}
        </label>
        <input
          id={`${id}-words`}
          className="text-field"
          // biome-ignore lint/a11y/noAutofocus: the person has just asked for this very field
          autoFocus
          maxLength={200}
          value={words}
          onChange={event => setWords(event.target.value)}
        />
      </div>
      {isShort && (
        <div className="stock-form__field">
          <label htmlFor={`${id}-job`}>Or fitted on job</label>
          <input
            id={`${id}-job`}
            className="text-field number"
            maxLength={60}
            value={job}
            onChange={event => setJob(event.target.value)}
          />
        </div>
      )}
      <button type="submit" className="order-button">
        Put down <KeyHint>Enter</KeyHint>
      </button>
    </form>
  )
}
