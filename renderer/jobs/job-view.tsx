import { useMutation } from '@tanstack/react-query'
import type { Job } from '../../shared-schemas/jobs.ts'
import { KeyHint } from '../components/key-hint.tsx'
import { wordMoment } from '../shelves/shelf-words.ts'
import { EndVisit } from './end-visit.tsx'
import { JobNeeds } from './job-needs.tsx'
import { JobParts } from './job-parts.tsx'
import { wordModels, wordState, wordVisit } from './job-words.ts'
import { TakePart } from './take-part.tsx'
import type { Jobs } from './use-jobs.ts'

interface JobViewProps {
  readonly job: Job
  readonly jobs: Jobs
  readonly onUndo: () => void
}

/** One job: what it is, what it needs, what was taken for it, and how it ends. */
export function JobView({ job, jobs, onUndo }: JobViewProps) {
  const isOpen = job.state === 'open'
  const reopen = useMutation({ mutationFn: jobs.reopen, networkMode: 'always' })
  return (
    <section className="shelf job-view" aria-labelledby="job-view">
      <h2 id="job-view" className="stock-sentence">
        <span className="number">{job.job}</span>{' '}
        {job.symptom === '' ? 'No symptom is written down' : job.symptom}
      </h2>
      <p>
        <span className="number job-view__model">
          {job.brand} {job.model}
        </span>{' '}
        {wordModels(job)}
      </p>
      <p className="quiet">
        {[
          wordState(job),
          job.date,
          job.van ?? 'no van',
          ...(job.customer === undefined ? [] : [`customer's reference ${job.customer}`]),
        ].join(', ')}
        .
      </p>
      {job.openedOn.length > 1 && (
        <p className="problem-note" role="alert">
          This number was given to a job on {job.openedOn.join(' and on ')}. The sheet that was written last
          shows; check whose parts are whose, and open one of them again under another number.
        </p>
      )}
      <p className="stock-acts">
        {isOpen && (
          <button
            type="button"
            className="order-button order-button--main"
            aria-keyshortcuts="F9"
            onClick={() => jobs.setEnding(true)}
          >
            End the visit… <KeyHint>F9</KeyHint>
          </button>
        )}
        <button type="button" className="order-button" aria-keyshortcuts="F8" onClick={() => window.print()}>
          Print the job sheet <KeyHint>F8</KeyHint>
        </button>
        {isOpen && (
          <>
            <button type="button" className="order-button" aria-keyshortcuts="F10" onClick={onUndo}>
              Take the last step back <KeyHint>F10</KeyHint>
            </button>
            <button type="button" className="order-button" onClick={() => jobs.setWriting(true)}>
              Change what is written
            </button>
          </>
        )}
        {!isOpen && (
          <button type="button" className="order-button" onClick={() => reopen.mutate()}>
            Open it again
          </button>
        )}
      </p>
      <p className={jobs.done === '' ? 'unseen' : 'stock-done'} role="status">
        {jobs.done}
      </p>
      {jobs.isEnding && isOpen && <EndVisit job={job} jobs={jobs} />}
      <JobParts job={job} jobs={jobs} />
      {isOpen && <TakePart jobs={jobs} />}
      <JobNeeds job={job} jobs={jobs} />
      {job.visits.length > 0 && (
        <section aria-labelledby="job-visits">
          <h3 id="job-visits" className="stock-heading">
            Visits
          </h3>
          <ol className="kept-list">
            {job.visits.map(visit => (
              <li key={visit.recordedAt}>
                {wordVisit(visit)}{' '}
                <span className="quiet">
                  {wordMoment(visit.recordedAt)} {visit.initials}
                </span>
              </li>
            ))}
          </ol>
        </section>
      )}
    </section>
  )
}
