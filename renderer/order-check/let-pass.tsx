import { useMutation } from '@tanstack/react-query'
import { type FormEvent, useId, useState } from 'react'
import { initials as someInitials } from '../../shared-schemas/initials.ts'
import { type OrderFlag, type OrderLine, overrideReason } from '../../shared-schemas/order-check.ts'
import { ask } from '../bridge/client.ts'

interface LetPassProps {
  readonly flag: OrderFlag
  readonly line: OrderLine
  readonly supplier: string
  readonly initials: string
  readonly onSign: (initials: string) => void
  readonly onRecorded: () => void
}

/** Lets one stop pass, for a reason and with initials, both of which are kept and shown from then on. */
export function LetPass({ flag, line, supplier, initials, onSign, onRecorded }: LetPassProps) {
  const [isOpen, setOpen] = useState(false)
  const [reason, setReason] = useState('')
  const [missing, setMissing] = useState<string>()
  const id = useId()
  const record = useMutation({
    mutationFn: () =>
      ask('order-check.override-stop', {
        line,
        code: flag.code,
        reason,
        initials,
        ...(supplier === '' ? {} : { supplier }),
      }),
    networkMode: 'always',
    onSuccess: onRecorded,
  })
  const onSubmit = (event: FormEvent) => {
    event.preventDefault()
    const missing = findMissing(reason, initials)
    setMissing(missing)
    if (missing === undefined && !record.isPending) record.mutate()
  }
  if (!isOpen)
    return (
      <button type="button" className="plain-button" onClick={() => setOpen(true)}>
        Let this pass…
      </button>
    )
  return (
    <form className="let-pass" onSubmit={onSubmit}>
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
        onChange={event => onSign(event.target.value)}
      />
      <button type="submit" className="order-button">
        Record and let pass
      </button>
      {(missing !== undefined || record.error !== null) && (
        <p className="problem-note" role="alert">
          {missing ?? record.error?.message}
        </p>
      )}
    </form>
  )
}

/** What is still wanted before the stop can be let pass. */
function findMissing(reason: string, initials: string): string | undefined {
  if (!overrideReason.safeParse(reason).success) return 'Say in words why this may pass; the reason is kept.'
  if (!someInitials.safeParse(initials).success) return 'Sign with your initials: one to six letters.'
  return undefined
}
