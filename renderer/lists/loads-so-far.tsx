import { useQuery } from '@tanstack/react-query'
import { type KeyboardEvent, useState } from 'react'
import type { LoadEntry } from '../../shared-schemas/load-log.ts'
import { ask } from '../bridge/client.ts'
import { ProblemNote } from '../components/problem-note.tsx'
import { useLasting } from '../components/use-lasting.ts'
import { ChangedRows } from './changed-rows.tsx'
import { FileCounts } from './file-counts.tsx'
import { UndoLoad } from './undo-load.tsx'
import { addCounts, wordFigure, wordMoment, wordRows } from './word-figures.ts'

/** Every load, the latest first: who, when, what it did, and the way to take it back. */
export function LoadsSoFar() {
  const loads = useQuery({
    queryKey: ['catalogue.list-loads'],
    queryFn: () => ask('catalogue.list-loads', {}),
    staleTime: 0,
  })
  const [open, setOpen] = useState<number>()
  const [told, setTold] = useState('')
  const isWaiting = useLasting(loads.isPending)
  const entries = loads.data?.loads
  return (
    <section aria-label="Loads so far" className="loads">
      <h2 className="order-card__sentence">Loads so far</h2>
      <p role="status">{told}</p>
      {isWaiting && <p className="card__waiting">Looking them up…</p>}
      {loads.error !== null && (
        <ProblemNote problem={loads.error} kept="Nothing was changed." onRetry={() => void loads.refetch()} />
      )}
      {entries?.length === 0 && (
        <p>Nothing was loaded yet. Name a folder of catalogue files, or a supplier’s list, in the field.</p>
      )}
      <ul className="loads__list" onKeyDown={stepThroughLoads}>
        {entries?.map(entry => (
          <li key={entry.loadRunId} className="loads__entry">
            <button
              type="button"
              className="loads__line"
              data-load={entry.loadRunId}
              aria-expanded={open === entry.loadRunId}
              onClick={() => setOpen(open === entry.loadRunId ? undefined : entry.loadRunId)}
            >
              <LoadLine entry={entry} />
            </button>
            {open === entry.loadRunId && (
              <LoadDetail
                entry={entry}
                onUndone={words => {
                  setTold(words)
                  void loads.refetch()
                }}
              />
            )}
          </li>
        ))}
      </ul>
    </section>
  )
}

function LoadLine({ entry }: { readonly entry: LoadEntry }) {
  const { loadRunId, at, path, initials, device, undoes, undoneBy, files } = entry
  const { added, changed, retired, rejected } = addCounts(files)
  return (
    <>
      <span className="loads__number">{loadRunId}</span>
      <span className="loads__when">{wordMoment(at)}</span>
      <span className="loads__who">
        {initials === '' ? `unsigned, on ${device}` : initials.toUpperCase()}
      </span>
      <span className="loads__what">
        {undoes === null ? <span className="number">{path}</span> : `Undid load ${undoes}`}
        {undoneBy !== null && <strong> Undone by load {undoneBy}.</strong>}
      </span>
      <span className="loads__counts">
        {undoes === null &&
          `${wordFigure(added)} added, ${wordFigure(changed)} changed, ${wordFigure(retired)} retired, ${wordFigure(rejected)} rejected`}
      </span>
    </>
  )
}

interface LoadDetailProps {
  readonly entry: LoadEntry
  readonly onUndone: (words: string) => void
}

function LoadDetail({ entry, onUndone }: LoadDetailProps) {
  const { loadRunId, reason, files, undoes, undoneBy, layout } = entry
  const detail = useQuery({
    queryKey: ['catalogue.read-load', loadRunId],
    queryFn: () => ask('catalogue.read-load', { loadRunId, most: mostRows }),
  })
  const isWaiting = useLasting(detail.isPending)
  return (
    <div className="loads__detail">
      {reason !== null && <p>Reason: {reason}</p>}
      {layout !== null && <p>Read by the layout “{layout}”.</p>}
      {files.length > 0 && <FileCounts files={files} caption={`Files of load ${loadRunId}`} />}
      {undoes === null && undoneBy === null && <UndoLoad loadRunId={loadRunId} onUndone={onUndone} />}
      {isWaiting && <p className="card__waiting">Looking its rows up…</p>}
      {detail.error !== null && (
        <ProblemNote
          problem={detail.error}
          kept="Nothing was changed."
          onRetry={() => void detail.refetch()}
        />
      )}
      {detail.data !== undefined && (
        <>
          {detail.data.rows === 0 && (
            <p className="quiet">It wrote no row but fitments, which each verdict’s history tells.</p>
          )}
          <ChangedRows
            changes={detail.data.changes}
            title={
              detail.data.rows > mostRows
                ? `The first ${mostRows} of ${wordRows(detail.data.rows)} written`
                : `${wordRows(detail.data.rows)} written`
            }
          />
        </>
      )}
    </div>
  )
}

const mostRows = 500

/** Up and down go from load to load; inside an unfolded one they are the fields'. */
function stepThroughLoads(event: KeyboardEvent<HTMLUListElement>): void {
  if (event.key !== 'ArrowDown' && event.key !== 'ArrowUp') return
  const lines = [...event.currentTarget.querySelectorAll<HTMLElement>('[data-load]')]
  const at = lines.findIndex(line => line.matches(':focus'))
  if (at < 0) return
  event.preventDefault()
  lines[event.key === 'ArrowDown' ? at + 1 : at - 1]?.focus()
}
