import { useQuery } from '@tanstack/react-query'
import { type FormEvent, useState } from 'react'
import { ask } from '../bridge/client.ts'
import { useSettled } from '../components/use-settled.ts'
import { wordState } from './job-words.ts'
import type { Jobs } from './use-jobs.ts'

const states = { open: 'open', ended: 'ended', all: 'all' } as const

/** Jobs, the latest first; Enter in the field opens the first of them. */
export function JobList({ jobs }: { readonly jobs: Jobs }) {
  const [text, setText] = useState('')
  const [state, setState] = useState<keyof typeof states>('open')
  const asked = useSettled({ text, state }, text === '' ? 0 : 120)
  const list = useQuery({
    queryKey: ['stock', 'jobs', asked],
    queryFn: () => ask('jobs.list-jobs', { ...asked, most: 60 }),
    staleTime: 0,
    placeholderData: before => before,
  })
  const found = list.data?.jobs ?? []
  const onSubmit = async (event: FormEvent) => {
    event.preventDefault()
    // What was typed just now counts, not what was settled before.
    const { jobs: now } = await ask('jobs.list-jobs', { text, state, most: 1 })
    const [first] = now
    if (first !== undefined) jobs.show(first.job)
  }
  return (
    <section aria-labelledby="job-list">
      <h2 id="job-list" className="stock-heading">
        Jobs
      </h2>
      <form className="stock-form" aria-label="Find a job" onSubmit={event => void onSubmit(event)}>
        <div className="stock-form__field">
          <label htmlFor="job-text">Number, model, symptom or customer</label>
          <input
            id="job-text"
            className="text-field"
            data-first-field
            autoComplete="off"
            maxLength={60}
            value={text}
            onChange={event => setText(event.target.value)}
          />
        </div>
        <div className="stock-form__field stock-form__field--short">
          <label htmlFor="job-state">Which</label>
          <select
            id="job-state"
            className="text-field"
            value={state}
            onChange={event =>
              setState(event.target.value in states ? (event.target.value as 'open') : 'open')
            }
          >
            {Object.keys(states).map(name => (
              <option key={name}>{name}</option>
            ))}
          </select>
        </div>
        <button type="submit" className="unseen">
          Open the first
        </button>
      </form>
      {list.error !== null && (
        <p className="problem-note" role="alert">
          {list.error.message}
        </p>
      )}
      {list.data !== undefined && found.length === 0 && (
        <p className="quiet">{text === '' ? `No job is ${state}.` : 'No job has these words.'}</p>
      )}
      <ul className="job-list">
        {found.map(job => (
          <li key={job.job}>
            <button
              type="button"
              className="job-list__job"
              aria-current={job.job === jobs.number || undefined}
              onClick={() => jobs.show(job.job)}
            >
              <span className="number">{job.job}</span> <span className="quiet">{job.date}</span>{' '}
              <span className="quiet">{job.van}</span>
              <br />
              <span className="number">
                {job.brand} {job.model}
              </span>{' '}
              {job.symptom}
              {job.state !== 'open' && <em> {wordState(job)}</em>}
              {job.inHand > 0 && <strong> {job.inHand} in hand</strong>}
            </button>
          </li>
        ))}
      </ul>
      {list.data?.more === true && <p className="quiet">There are more: type a word of the job.</p>}
    </section>
  )
}
