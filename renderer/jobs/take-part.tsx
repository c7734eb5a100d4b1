import { useMutation } from '@tanstack/react-query'
import { type FormEvent, useState } from 'react'
import { AskProblem } from '../bridge/ask-problem.ts'
import { KeyHint } from '../components/key-hint.tsx'
import type { Jobs } from './use-jobs.ts'

/** A part taken by hand; scanning it does the same. */
export function TakePart({ jobs }: { readonly jobs: Jobs }) {
  const [part, setPart] = useState('')
  const [pieces, setPieces] = useState('1')
  const take = useMutation({
    mutationFn: (more: { readonly usedBeforeBooked?: boolean; readonly takeReserved?: boolean }) =>
      jobs.take(part, Number(pieces), more),
    networkMode: 'always',
    onSuccess: () => {
      setPart('')
      setPieces('1')
      document.getElementById('job-take-part')?.focus()
    },
  })
  const code = take.error instanceof AskProblem ? take.error.problem.code : null
  const onSubmit = (event: FormEvent) => {
    event.preventDefault()
    if (!take.isPending) take.mutate({})
  }
  return (
    <form className="stock-form" aria-label="Take a part" onSubmit={onSubmit}>
      <div className="stock-form__field">
        <label htmlFor="job-take-part">
          Take a part, or scan it <KeyHint>F2</KeyHint>
        </label>
        <input
          id="job-take-part"
          className="text-field number"
          aria-keyshortcuts="F2"
          autoComplete="off"
          spellCheck={false}
          maxLength={60}
          value={part}
          onChange={event => setPart(event.target.value)}
        />
      </div>
      <div className="stock-form__field stock-form__field--short">
        <label htmlFor="job-take-pieces">Pieces</label>
        <input
          id="job-take-pieces"
          className="text-field"
          inputMode="numeric"
          value={pieces}
          onChange={event => setPieces(event.target.value)}
        />
      </div>
      <div className="stock-form__field">
        <label htmlFor="job-take-from">From</label>
        <select
          id="job-take-from"
          className="text-field"
          value={jobs.takenFrom ?? ''}
          onChange={event => jobs.setPlace(event.target.value)}
        >
          {jobs.takenFrom === null && <option value="">not said</option>}
          {jobs.usable.map(({ location, name }) => (
            <option key={location} value={location}>
              {name}
            </option>
          ))}
        </select>
      </div>
      <button type="submit" className="order-button">
        Take
      </button>
      <p className="stock-form__said" role="status">
        {take.error === null ? (take.data ?? '') : ''}
      </p>
      {take.error !== null && (
        <div className="problem-note" role="alert">
          <p>{take.error.message}</p>
          {code === 'not-enough-on-hand' && (
            <button
              type="button"
              className="plain-button"
              onClick={() => take.mutate({ usedBeforeBooked: true })}
            >
              It was used before it was booked
            </button>
          )}
          {code === 'kept-for-others' && (
            <button
              type="button"
              className="plain-button"
              onClick={() => take.mutate({ takeReserved: true })}
            >
              Take it all the same
            </button>
          )}
        </div>
      )}
    </form>
  )
}
