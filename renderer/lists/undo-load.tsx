import { useMutation, useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import type { Output } from '../../shared-schemas/index.ts'
import { ask } from '../bridge/client.ts'
import { SignedAct } from '../components/signed-act.tsx'
import { RunProgress } from './run-progress.tsx'
import { wordRows } from './word-figures.ts'

interface UndoLoadProps {
  readonly loadRunId: number
  readonly onUndone: (words: string) => void
}

/** Takes a whole load back, for a reason and with initials. */
export function UndoLoad({ loadRunId, onUndone }: UndoLoadProps) {
  const [isOpen, setOpen] = useState(false)
  const [initials, setInitials] = useState('')
  const client = useQueryClient()
  const undo = useMutation({
    mutationFn: (reason: string) => ask('catalogue.undo-load', { loadRunId, reason, initials }),
    networkMode: 'always',
    onSuccess: async undone => {
      onUndone(wordUndone(loadRunId, undone))
      await client.invalidateQueries()
    },
  })
  if (!isOpen)
    return (
      <div>
        <button type="button" className="plain-button" onClick={() => setOpen(true)}>
          Undo this load…
        </button>
      </div>
    )
  return (
    <>
      <SignedAct
        label={`Undo load ${loadRunId}`}
        act={`Undo load ${loadRunId}`}
        initials={initials}
        onInitials={setInitials}
        findFault={reason =>
          reason.trim() === '' ? 'Say in words why it is undone; the reason is kept.' : undefined
        }
        isPending={undo.isPending}
        problem={undo.error}
        onAct={undo.mutate}
      >
        <p>
          Every row it changed says again what it said before. Rows it added go, but for those that something
          recorded since still names.
        </p>
      </SignedAct>
      <RunProgress isRunning={undo.isPending} what={`Undoing load ${loadRunId}`} />
    </>
  )
}

function wordUndone(loadRunId: number, undone: Output<'catalogue.undo-load'>): string {
  const kept = undone.kept.map(({ table, rows }) => `${wordRows(rows)} of ${table.replaceAll('_', ' ')}`)
  const stayed = kept.length === 0 ? '' : ` Something recorded since names ${kept.join(', ')}: they stay.`
  return `Load ${loadRunId} was undone, by load ${undone.loadRunId}: ${wordRows(undone.restored)} as before.${stayed}`
}
