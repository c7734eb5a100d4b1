import { useMutation, useQueryClient } from '@tanstack/react-query'
import { type FormEvent, useId, useState } from 'react'
import type { Output } from '../../shared-schemas/index.ts'
import { initials as someInitials } from '../../shared-schemas/initials.ts'
import { ask } from '../bridge/client.ts'
import { RunProgress } from './run-progress.tsx'
import { wordRows } from './word-figures.ts'

interface UndoLoadProps {
  readonly loadRunId: number
  readonly onUndone: (words: string) => void
}

/** Takes a whole load back, for a reason and with initials. */
export function UndoLoad({ loadRunId, onUndone }: UndoLoadProps) {
  const [isOpen, setOpen] = useState(false)
  const [reason, setReason] = useState('')
  const [initials, setInitials] = useState('')
  const [missing, setMissing] = useState<string>()
  const id = useId()
  const client = useQueryClient()
  const undo = useMutation({
    mutationFn: () => ask('catalogue.undo-load', { loadRunId, reason, initials }),
    networkMode: 'always',
    onSuccess: async undone => {
      onUndone(wordUndone(loadRunId, undone))
      await client.invalidateQueries()
    },
  })
  const onSubmit = (event: FormEvent) => {
    event.preventDefault()
    const missing = findMissing(reason, initials)
    setMissing(missing)
    if (missing === undefined && !undo.isPending) undo.mutate()
  }
  if (!isOpen)
    return (
      <div>
        <button type="button" className="plain-button" onClick={() => setOpen(true)}>
          Undo this load…
        </button>
      </div>
    )
  return (
    <form className="let-pass" aria-label={`Undo load ${loadRunId}`} onSubmit={onSubmit}>
      <p>
        Every row it changed says again what it said before. Rows it added go, but for those that something
        recorded since still names.
      </p>
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
        onChange={event => setInitials(event.target.value)}
      />
      <button type="submit" className="order-button">
        Undo load {loadRunId}
      </button>
      {(missing !== undefined || undo.error !== null) && (
        <p className="problem-note" role="alert">
          {missing ?? undo.error?.message}
        </p>
      )}
      <RunProgress isRunning={undo.isPending} what={`Undoing load ${loadRunId}`} />
    </form>
  )
}

/** What is still wanted before the load can be undone. */
function findMissing(reason: string, initials: string): string | undefined {
  if (reason.trim() === '') return 'Say in words why it is undone; the reason is kept.'
  if (!someInitials.safeParse(initials).success) return 'Sign with your initials: one to six letters.'
  return undefined
}

function wordUndone(loadRunId: number, undone: Output<'catalogue.undo-load'>): string {
  const kept = undone.kept.map(({ table, rows }) => `${wordRows(rows)} of ${table.replaceAll('_', ' ')}`)
  const stayed = kept.length === 0 ? '' : ` Something recorded since names ${kept.join(', ')}: they stay.`
  return `Load ${loadRunId} was undone, by load ${undone.loadRunId}: ${wordRows(undone.restored)} as before.${stayed}`
}
