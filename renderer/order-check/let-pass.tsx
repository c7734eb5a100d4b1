import { useMutation } from '@tanstack/react-query'
import { useState } from 'react'
import { type OrderFlag, type OrderLine, overrideReason } from '../../shared-schemas/order-check.ts'
import { ask } from '../bridge/client.ts'
import { SignedAct } from '../components/signed-act.tsx'

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
  const record = useMutation({
    mutationFn: (reason: string) =>
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
  if (!isOpen)
    return (
      <button type="button" className="plain-button" onClick={() => setOpen(true)}>
        Let this pass…
      </button>
    )
  return (
    <SignedAct
      act="Record and let pass"
      initials={initials}
      onInitials={onSign}
      findFault={reason =>
        overrideReason.safeParse(reason).success
          ? undefined
          : 'Say in words why this may pass; the reason is kept.'
      }
      isPending={record.isPending}
      problem={record.error}
      onAct={record.mutate}
    />
  )
}
