import { useMutation, useQuery } from '@tanstack/react-query'
import { type FormEvent, useState } from 'react'
import type { FittingFamily } from '../../shared-schemas/fit-check.ts'
import type { Job, JobNeed } from '../../shared-schemas/jobs.ts'
import { ask } from '../bridge/client.ts'
import { KeyHint } from '../components/key-hint.tsx'
import { VerdictWord } from '../components/verdict-word.tsx'
import { useStockChange } from '../shelves/use-stock-change.ts'
import type { Jobs } from './use-jobs.ts'

interface JobNeedsProps {
  readonly job: Job
  readonly jobs: Jobs
}

/** What the job needs, each with the parts that fit its appliance and where they lie; and a field that finds more. */
export function JobNeeds({ job, jobs }: JobNeedsProps) {
  return (
    <section aria-labelledby="job-needs-heading">
      <h3 id="job-needs-heading" className="stock-heading">
        What it needs
      </h3>
      {job.needs.length === 0 && <p className="quiet">Nothing is written down yet.</p>}
      <ul className="need-list">
        {job.needs.map(need => (
          <Need key={`${need.family} ${need.partNumber}`} need={need} job={job} jobs={jobs} />
        ))}
      </ul>
      {job.state === 'open' && <FindNeeded job={job} jobs={jobs} />}
    </section>
  )
}

function Need({ need, job, jobs }: JobNeedsProps & { readonly need: JobNeed }) {
  const { family, familyName, partNumber, quantity, isMet } = need
  const fitting = useFitting(job, familyName, !isMet && job.state === 'open')
  const found = fitting.data?.families.find(one => one.family === family)
  const what = partNumber === null ? { family } : { part: partNumber }
  const drop = useMutation({ mutationFn: () => jobs.need({ ...what, quantity: 0 }), networkMode: 'always' })
  return (
    <li className="need">
      <p>
        {quantity} × <strong>{familyName}</strong>{' '}
        {partNumber !== null && <span className="number stock-number">{partNumber}</span>}{' '}
        {isMet ? <em>taken</em> : <em>still needed</em>}{' '}
        {job.state === 'open' && !isMet && (
          <button type="button" className="plain-button" onClick={() => drop.mutate()}>
            Strike off<span className="unseen"> {partNumber ?? familyName}</span>
          </button>
        )}
      </p>
      {!isMet && found !== undefined && (
        <FittingPlaces found={found} only={partNumber} job={job} jobs={jobs} />
      )}
      {!isMet && job.models !== null && fitting.data !== undefined && found === undefined && (
        <p className="quiet">The catalogue lists no {familyName.toLowerCase()} for this appliance.</p>
      )}
      {(drop.error ?? fitting.error) !== null && (
        <p className="problem-note" role="alert">
          {(drop.error ?? fitting.error)?.message}
        </p>
      )}
    </li>
  )
}

interface FittingPlacesProps extends JobNeedsProps {
  readonly found: FittingFamily
  /** Only this part will do; null for any of the family. */
  readonly only: string | null
}

/** The parts that answer a need, with where they are; a piece is kept for the job where it lies. */
function FittingPlaces({ found, only, job, jobs }: FittingPlacesProps) {
  const keep = useStockChange(({ part, location }: { readonly part: string; readonly location: string }) =>
    ask('stock-ledger.reserve-part', {
      ...{ part, location, quantity: 1, heldFor: 'job', reference: job.job },
      ...jobs.signed,
    }),
  )
  const parts = found.parts.filter(({ partNumber, verdict }) =>
    only === null ? verdict !== 'does-not-fit' : partNumber === only,
  )
  return (
    <ul className="need__parts">
      {parts.map(({ partNumber, verdict, onHand }) => (
        <li key={partNumber}>
          <span className="number stock-number">{partNumber}</span> <VerdictWord verdict={verdict} />{' '}
          {onHand.length === 0 && <span className="quiet">none on hand: order it</span>}
          {onHand.map(({ location, name, bin, quantity }) => (
            <span key={location} className="need__place">
              {quantity} in {bin === null ? name : <span className="number">{`${bin} ${location}`}</span>}{' '}
              <button
                type="button"
                className="plain-button"
                onClick={() => keep.mutate({ part: partNumber, location })}
              >
                Keep one
                <span className="unseen">
                  {' '}
                  {partNumber} in {location}
                </span>
              </button>
            </span>
          ))}
        </li>
      ))}
      {keep.error !== null && (
        <li>
          <p className="problem-note" role="alert">
            {keep.error.message}
          </p>
        </li>
      )}
    </ul>
  )
}

/** Words of a part, or its number; Enter takes the first family found, or the number itself. */
function FindNeeded({ job, jobs }: JobNeedsProps) {
  const [words, setWords] = useState('')
  const fitting = useFitting(job, words.trim(), words.trim().length > 1)
  const families = fitting.data?.families ?? []
  const add = useMutation({
    mutationFn: (what: { readonly part: string } | { readonly family: string }) =>
      jobs.need({ ...what, quantity: 1 }),
    networkMode: 'always',
    onSuccess: () => setWords(''),
  })
  const onSubmit = (event: FormEvent) => {
    event.preventDefault()
    if (words.trim() === '' || add.isPending) return
    const [first] = families
    add.mutate(first === undefined || /\d/.test(words) ? { part: words.trim() } : { family: first.family })
  }
  return (
    <form className="stock-form" aria-label="Say what is needed" onSubmit={onSubmit}>
      <div className="stock-form__field">
        <label htmlFor="job-needs">
          It needs: a word of it, or a part number <KeyHint>F7</KeyHint>
        </label>
        <input
          id="job-needs"
          className="text-field"
          aria-keyshortcuts="F7"
          autoComplete="off"
          maxLength={60}
          placeholder={job.models === null ? 'part number' : 'pump, door lock'}
          value={words}
          onChange={event => setWords(event.target.value)}
        />
      </div>
      <button type="submit" className="order-button">
        Write it down
      </button>
      {words.trim().length > 1 && families.length > 0 && (
        <ul className="need__parts stock-form__said">
          {families.slice(0, 6).map(({ family, name, verdict }) => (
            <li key={family}>
              <button type="button" className="plain-button" onClick={() => add.mutate({ family })}>
                {name}
              </button>{' '}
              <VerdictWord verdict={verdict} />
            </li>
          ))}
        </ul>
      )}
      {add.error !== null && (
        <p className="problem-note" role="alert">
          {add.error.message}
        </p>
      )}
    </form>
  )
}

/** What fits the appliance of the job and has these words. */
function useFitting(job: Job, words: string, isWanted: boolean) {
  const { model, brand, made, serial, volts, hertz, watts } = job
  const read = Object.fromEntries(
    Object.entries({ brand, made, serial, volts, hertz, watts }).filter(([, value]) => value !== undefined),
  )
  return useQuery({
    queryKey: ['stock', 'fitting', model, read, words],
    queryFn: () => ask('fit-check.list-fitting-parts', { model, ...read, function: words }),
    enabled: isWanted && job.models !== null && words !== '',
  })
}
