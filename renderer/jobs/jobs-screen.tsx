import { useEffect } from 'react'
import { AskProblem } from '../bridge/ask-problem.ts'
import { ask } from '../bridge/client.ts'
import { KeyHint } from '../components/key-hint.tsx'
import { type NamedScreen, TopLine } from '../components/top-line.tsx'
import { useScreenKeys } from '../components/use-screen-keys.ts'
import { useHanded } from '../hand-over.ts'
import { ScanLine } from '../scanning/scan-line.tsx'
import { useScanned } from '../scanning/use-scanned.ts'
import { JobFactsForm } from './job-facts-form.tsx'
import { JobList } from './job-list.tsx'
import { JobSheet } from './job-sheet.tsx'
import { JobView } from './job-view.tsx'
import { type Jobs, useJobs } from './use-jobs.ts'

/** Jobs: which there are on the left, and on the right the one that is worked on; or a new one being written. */
export function JobsScreen({ screens }: { readonly screens: readonly NamedScreen[] }) {
  const jobs = useJobs()
  const { note, take, undo, forget } = useScanned({
    onPart: part => jobs.take(part.partNumber, part.pieces),
    onLocation: ({ location, name }) => {
      jobs.setPlace(location)
      return `Parts are taken from ${name} now.`
    },
    onUndo: jobs.takeBack,
    onUnknown: code => openScanned(jobs, code),
  })
  const { job, isWriting, isEnding } = jobs
  const focusFirst = () => focusField('[data-first-field]')
  const startNew = () => {
    jobs.leave()
    jobs.setWriting(true)
  }
  useScreenKeys({
    Escape: () => {
      forget()
      if (isEnding) jobs.setEnding(false)
      else if (isWriting) jobs.setWriting(false)
      else focusFirst()
    },
    Insert: startNew,
    F2: () => focusField('#job-take-part'),
    F6: () => focusField('[data-in-hand] button'),
    F7: () => {
      if (note?.unknown == null) focusField('#job-needs')
    },
    F8: () => {
      if (job !== undefined) window.print()
    },
    F9: () => {
      if (job?.state === 'open') jobs.setEnding(true)
    },
    F10: undo,
  })
  useEffect(() => focusField('[data-first-field]'), [])
  useHanded('Jobs', handed => jobs.show(handed.job))
  return (
    <div className="counter">
      <TopLine
        screens={screens}
        shop={jobs.locations.find(({ kind }) => kind === 'shop')?.name ?? 'Tallyplate'}
      />
      <main className="stock-bench stock-bench--two job-bench">
        <h1 className="unseen">Jobs</h1>
        <div className="stock-side">
          <p className="stock-acts">
            <button
              type="button"
              className="order-button order-button--main"
              aria-keyshortcuts="Insert"
              onClick={startNew}
            >
              New job <KeyHint>Insert</KeyHint>
            </button>
          </p>
          <ScanLine note={note} onAttached={take} />
        </div>
        {isWriting ? (
          <JobFactsForm key={job?.job ?? 'new'} jobs={jobs} />
        ) : job === undefined ? (
          <NothingOpen problem={jobs.problem} />
        ) : (
          <JobView key={job.job} job={job} jobs={jobs} onUndo={undo} />
        )}
        <div className="stock-side">
          <JobList jobs={jobs} />
        </div>
        {job !== undefined && !isWriting && <JobSheet job={job} />}
      </main>
    </div>
  )
}

/** The number of a job, as it stands in bars on its sheet, opens the job. */
async function openScanned(jobs: Jobs, code: string): Promise<string | undefined> {
  try {
    const { job } = await ask('jobs.read-job', { job: code.trim() })
    jobs.show(job)
    return `Job ${job}.`
  } catch (thrown) {
    if (thrown instanceof AskProblem) return undefined
    throw thrown
  }
}

function focusField(selector: string): void {
  const field = document.querySelector<HTMLElement>(`.job-bench ${selector}`)
  field?.focus()
  if (field instanceof HTMLInputElement) field.select()
}

function NothingOpen({ problem }: { readonly problem: Error | null }) {
  return (
    <section className="order-card__empty" aria-label="A job">
      <h2 className="stock-sentence">Choose a job, scan its sheet, or open a new one.</h2>
      <p>
        A job is an appliance by its plate and what is wrong with it. Scan a part and it is taken for the job
        out of its van; mark it as fitted, or bring it back. Every step is in the book.
      </p>
      {problem !== null && (
        <p className="problem-note" role="alert">
          {problem.message}
        </p>
      )}
    </section>
  )
}
