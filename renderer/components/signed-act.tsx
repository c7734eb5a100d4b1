import { type FormEvent, type ReactNode, useId, useState } from 'react'
import { initials as someInitials } from '../../shared-schemas/initials.ts'

interface SignedActProps {
  readonly label?: string
  /** What the button that does it says. */
  readonly act: string
  readonly initials: string
  readonly onInitials: (initials: string) => void
  /** What is wanting in the reason, in a sentence; undefined where nothing is. */
  readonly findFault: (reason: string) => string | undefined
  readonly isPending: boolean
  readonly problem: Error | null
  readonly onAct: (reason: string) => void
  readonly children?: ReactNode
}

/** What is done only for a reason and with initials, both of which are kept. */
export function SignedAct(props: SignedActProps) {
  const { label, act, initials, onInitials, findFault, isPending, problem, onAct, children } = props
  const [reason, setReason] = useState('')
  const [missing, setMissing] = useState<string>()
  const id = useId()
  const onSubmit = (event: FormEvent) => {
    event.preventDefault()
    const unsigned = someInitials.safeParse(initials).success
      ? undefined
      : 'Sign with your initials: one to six letters.'
    const missing = findFault(reason) ?? unsigned
    setMissing(missing)
    if (missing === undefined && !isPending) onAct(reason)
  }
  return (
    <form className="let-pass" aria-label={label} onSubmit={onSubmit}>
      {children}
      <label htmlFor={`${id}-reason`}>Reason, which is kept</label>
      <input
        id={`${id}-reason`}
        className="text-field"
        // biome-ignore lint/a11y/noAutofocus: the person has just asked for this very field
        autoFocus
        maxLength={400}
        value={reason}
        onChange={event => setReason(event.target.value)}
      />
      <label htmlFor={`${id}-initials`}>Initials</label>
      <input
        id={`${id}-initials`}
        className="text-field let-pass__initials"
        maxLength={6}
        value={initials}
        onChange={event => onInitials(event.target.value)}
      />
      <button type="submit" className="order-button">
        {act}
      </button>
      {(missing !== undefined || problem !== null) && (
        <p className="problem-note" role="alert">
          {missing ?? problem?.message}
        </p>
      )}
    </form>
  )
}
