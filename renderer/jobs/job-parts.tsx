import { useMutation } from '@tanstack/react-query'
import { type KeyboardEvent, useState } from 'react'
import type { Job, JobPart } from '../../shared-schemas/jobs.ts'
import { CautionList } from '../components/caution-list.tsx'
import { KeyHint } from '../components/key-hint.tsx'
import { VerdictWord } from '../components/verdict-word.tsx'
import { unlessScanned } from '../scanning/use-scans.ts'
import type { Jobs } from './use-jobs.ts'

/** The parts of a job, those in hand first: each is fitted or brought back by one key. */
export function JobParts({ job, jobs }: { readonly job: Job; readonly jobs: Jobs }) {
  const inHandFirst = job.parts.toSorted((one, other) => Number(other.inHand > 0) - Number(one.inHand > 0))
  return (
    <section aria-labelledby="job-parts">
      <h3 id="job-parts" className="stock-heading">
        Parts {job.parts.some(({ inHand }) => inHand > 0) && <KeyHint>F6</KeyHint>}
      </h3>
      {job.parts.length === 0 ? (
        <p className="quiet">None yet. Scan what is taken for the job.</p>
      ) : (
        <ul className="variances" onKeyDown={stepThrough}>
          {inHandFirst.map(part => (
            <PartOfJob key={part.partNumber} part={part} jobs={jobs} isOpen={job.state === 'open'} />
          ))}
        </ul>
      )}
    </section>
  )
}

interface PartOfJobProps {
  readonly part: JobPart
  readonly jobs: Jobs
  readonly isOpen: boolean
}

function PartOfJob({ part, jobs, isOpen }: PartOfJobProps) {
  const { partNumber, inHand, fitted } = part
  const [chosen, setTo] = useState<string | null>(null)
  const to = chosen ?? part.takenFrom ?? jobs.takenFrom ?? ''
  const act = useMutation({ mutationFn: (step: () => Promise<string>) => step(), networkMode: 'always' })
  const steps: Readonly<Record<string, () => Promise<string>>> = isOpen
    ? {
        ...(inHand > 0 ? { F: () => jobs.fit(partNumber, 1), B: () => jobs.bringBack(partNumber, to) } : {}),
        ...(fitted > 0 ? { N: () => jobs.fit(partNumber, -1) } : {}),
      }
    : {}
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.target instanceof HTMLSelectElement || event.ctrlKey || event.altKey || event.metaKey) return
    const step = steps[event.key.toUpperCase()]
    if (step === undefined) return
    event.preventDefault()
    // The first key of a scan looks like one that was pressed: it must book nothing.
    unlessScanned(() => act.mutate(step))
  }
  return (
    <li
      className="variance"
      data-part={partNumber}
      data-in-hand={inHand > 0 || undefined}
      data-settled={inHand === 0 || undefined}
      onKeyDown={onKeyDown}
    >
      <p>
        <span className="number stock-number">{partNumber}</span>{' '}
        {part.description === '' ? part.family : part.description}{' '}
        {part.verdict !== null && <VerdictWord verdict={part.verdict} />}
      </p>
      <p className="variance__by">
        <strong>{wordCounts(part)}</strong>
      </p>
      {part.verdict !== null && part.verdict !== 'does-not-fit' && <CautionList cautions={part.cautions} />}
      {Object.keys(steps).length > 0 && (
        <div className="variance__choices">
          {inHand > 0 && (
            <>
              <StepButton
                keyName="F"
                says="Fitted"
                onAct={() => act.mutate(steps.F as () => Promise<string>)}
              />
              <StepButton
                keyName="B"
                says={`Back to ${to}`}
                onAct={() => act.mutate(steps.B as () => Promise<string>)}
              />
              <select
                className="job-part__to"
                aria-label={`Where ${partNumber} goes back to`}
                value={to}
                onChange={event => setTo(event.target.value)}
              >
                {jobs.usable.map(({ location }) => (
                  <option key={location}>{location}</option>
                ))}
              </select>
            </>
          )}
          {fitted > 0 && (
            <StepButton
              keyName="N"
              says="Not fitted after all"
              onAct={() => act.mutate(steps.N as () => Promise<string>)}
            />
          )}
        </div>
      )}
      <p className="unseen" role="status">
        {act.data ?? ''}
      </p>
      {act.error !== null && (
        <p className="problem-note" role="alert">
          {act.error.message}
        </p>
      )}
    </li>
  )
}

interface StepButtonProps {
  readonly keyName: string
  readonly says: string
  readonly onAct: () => void
}

function StepButton({ keyName, says, onAct }: StepButtonProps) {
  return (
    <button type="button" className="variance__choice" aria-keyshortcuts={keyName} onClick={onAct}>
      <KeyHint>{keyName}</KeyHint> {says}
    </button>
  )
}

function wordCounts({ kept, taken, fitted, broughtBack, inHand }: JobPart): string {
  const counts = [
    ...(kept > 0 ? [`${kept} kept`] : []),
    ...(taken > 0 ? [`${taken} taken`] : []),
    ...(fitted > 0 ? [`${fitted} fitted`] : []),
    ...(broughtBack > 0 ? [`${broughtBack} brought back`] : []),
  ].join(', ')
  if (inHand > 0) return `${counts}: ${inHand} in hand`
  return inHand < 0 ? `${counts}: ${-inHand} fitted and not booked as taken` : counts
}

/** Up and down go from part to part. */
function stepThrough(event: KeyboardEvent<HTMLUListElement>): void {
  if (event.key !== 'ArrowDown' && event.key !== 'ArrowUp') return
  if (event.target instanceof HTMLSelectElement) return
  const parts = [...event.currentTarget.querySelectorAll<HTMLElement>('[data-part]')]
  const at = parts.findIndex(part => part.contains(document.activeElement))
  const next = parts[event.key === 'ArrowDown' ? at + 1 : at - 1]?.querySelector<HTMLElement>('button')
  if (at < 0 || next == null) return
  event.preventDefault()
  next.focus()
}
