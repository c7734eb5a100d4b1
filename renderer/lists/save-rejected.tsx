import { type FormEvent, useState } from 'react'
import { KeyHint } from '../components/key-hint.tsx'
import type { AskedList, ListRun } from './use-list-run.ts'

interface SaveRejectedProps {
  readonly saving: ListRun['saveRejected']
  readonly list: AskedList
  readonly isBusy: boolean
}

/** Writes the rejected rows where the person says, to be mended there and loaded again. */
export function SaveRejected({ saving, list, isBusy }: SaveRejectedProps) {
  const [target, setTarget] = useState(() => suggestTarget(list.path))
  const onSubmit = (event: FormEvent) => {
    event.preventDefault()
    if (!isBusy && target.trim() !== '') saving.mutate({ list, rejectsFile: target.trim() })
  }
  return (
    <form className="save-rejected" onSubmit={onSubmit}>
      <label htmlFor="rejected-target">Save the rejected rows to</label>
      <input
        id="rejected-target"
        className="text-field number save-rejected__target"
        spellCheck={false}
        autoComplete="off"
        value={target}
        onChange={event => setTarget(event.target.value)}
      />
      <button type="submit" className="order-button" aria-keyshortcuts="F8" id="save-rejected">
        Save them <KeyHint>F8</KeyHint>
      </button>
      <p className="quiet">
        Each with its reason and the mend proposed. Mend the file and load it as it stands; the reasons are
        passed over.
      </p>
      <p role="status">
        {saving.isPending && 'Reading the list once more…'}
        {saving.isSuccess && `Saved at ${saving.variables.rejectsFile}.`}
      </p>
      {saving.error !== null && (
        <p className="problem-note" role="alert">
          {saving.error.message}
        </p>
      )}
    </form>
  )
}

/** Beside the list: for a folder, one of its own that holds a file for each. */
function suggestTarget(path: string): string {
  const ending = /\.(?:csv|tsv|txt|xlsx)$/i.exec(path)
  if (ending === null) return `${path.replace(/[\\/]$/, '')}-rejected`
  return `${path.slice(0, ending.index)}-rejected.csv`
}
