import { type FormEvent, useId, useState } from 'react'

interface ReasonFormProps {
  /** What it does, as its button says. */
  readonly name: string
  /** What it is about, for those who cannot see where it stands. */
  readonly about: string
  readonly asks: string
  readonly problem: Error | null
  readonly isBusy: boolean
  readonly onReason: (reason: string) => void
}

/** A button that asks for a reason before it acts. */
export function ReasonForm({ name, about, asks, problem, isBusy, onReason }: ReasonFormProps) {
  const id = useId()
  const [isOpen, setOpen] = useState(false)
  const [reason, setReason] = useState('')
  const onSubmit = (event: FormEvent) => {
    event.preventDefault()
    if (!isBusy) onReason(reason)
  }
  return (
    <>
      <button
        type="button"
        className="plain-button"
        aria-expanded={isOpen}
        onClick={() => setOpen(before => !before)}
      >
        {name}…<span className="unseen"> {about}</span>
      </button>
      {isOpen && (
        <form className="stock-form" aria-label={`${name} ${about}`} onSubmit={onSubmit}>
          <div className="stock-form__field">
            <label htmlFor={`${id}-reason`}>{asks}</label>
            <input
              id={`${id}-reason`}
              className="text-field"
              // biome-ignore lint/a11y/noAutofocus: the person has just asked for this very field
              autoFocus
              required
              maxLength={400}
              value={reason}
              onChange={event => setReason(event.target.value)}
            />
          </div>
          <button type="submit" className="order-button">
            {name}
          </button>
          {problem !== null && (
            <p className="problem-note" role="alert">
              {problem.message}
            </p>
          )}
        </form>
      )}
    </>
  )
}
