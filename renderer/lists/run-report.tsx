import type { LoadReport } from '../../shared-schemas/catalogue.ts'
import { wordLeftOut } from '../../shared-schemas/word-left-out.ts'
import { KeyHint } from '../components/key-hint.tsx'
import { ChangedRows } from './changed-rows.tsx'
import { FileCounts } from './file-counts.tsx'
import { RejectedRows } from './rejected-rows.tsx'
import { SaveRejected } from './save-rejected.tsx'
import { type AskedList, type ListRun, mostChanges } from './use-list-run.ts'
import { addCounts, wordOutcome } from './word-figures.ts'

interface RunReportProps {
  readonly run: ListRun
  readonly asked: AskedList | null
  readonly onShowLoads: () => void
}

/** What the dry run found, or what the load did: a sentence, then file by file, then row by row. */
export function RunReport({ run, asked, onShowLoads }: RunReportProps) {
  const { trial, load, saveRejected, isChangedSince, isRunning } = run
  const failed = load.error ?? trial.error
  if (isRunning && !saveRejected.isPending) return null
  if (failed !== null)
    return (
      <div className="problem-note" role="alert">
        <p className="problem-note__what">{failed.message}</p>
        <p>The catalogue is as it was, and the path is kept.</p>
      </div>
    )
  const report = load.data ?? trial.data
  if (report === undefined) return null
  const list = trial.variables?.list ?? asked
  return (
    <div className="run-report" data-stale={isChangedSince || undefined}>
      <h2 className="order-card__sentence">
        {report.dryRun ? 'Dry run. ' : 'Loaded. '}
        {wordOutcome(addCounts(report.files), report.dryRun)}
      </h2>
      <p role="status">
        {isChangedSince && !load.isSuccess ? 'Changed since this dry run. F9 does it again.' : ''}
      </p>
      {!report.dryRun && (
        <button type="button" className="order-button" aria-keyshortcuts="F2" onClick={onShowLoads}>
          Loads so far, where it can be undone <KeyHint>F2</KeyHint>
        </button>
      )}
      {report.leftOut.length > 0 && <p className="asked-sentence">{wordLeftOut(report.leftOut)}</p>}
      <FileCounts files={report.files} caption="Rows of each file" />
      {report.rejected.length > 0 && list !== null && (
        <SaveRejected saving={saveRejected} list={list} isBusy={isRunning} />
      )}
      <RejectedRows rejected={report.rejected} />
      <ChangedRows changes={report.changes} title={wordChanges(report)} />
    </div>
  )
}

function wordChanges({ changes, dryRun }: LoadReport): string {
  const would = dryRun ? 'that would be written' : 'that were written'
  return changes.length < mostChanges ? `Rows ${would}` : `The first ${mostChanges} rows ${would}`
}
