import { useMutation, useQueryClient } from '@tanstack/react-query'
import { type FormEvent, useId, useState } from 'react'
import type { WeighedFaults } from '../../shared-schemas/fault-finding.ts'
import { ask } from '../bridge/client.ts'
import { KeyHint } from '../components/key-hint.tsx'
import { useHandOn } from '../hand-over.ts'
import { type FaultEnquiry, questionOf } from './fault-enquiry.ts'

interface KeepForJobProps {
  readonly enquiry: FaultEnquiry
  readonly weighed: WeighedFaults
  /** The family that the job needs, where one is worth ordering for this model. */
  readonly family: string | undefined
}

/** Keeps what was found for a job, a new one or one that is open, so that it can be held against what was wrong in the end. */
export function KeepForJob({ enquiry, weighed, family }: KeepForJobProps) {
  const id = useId()
  const [job, setJob] = useState('')
  const [initials, setInitials] = useState('')
  const handOn = useHandOn()
  const queries = useQueryClient()
  const keep = useMutation({
    networkMode: 'always',
    mutationFn: async () => {
      const signed = initials.trim() === '' ? {} : { initials }
      const { measured: _, ...plate } = enquiry.appliance
      const kept =
        job.trim() === ''
          ? (await ask('jobs.open-job', { ...plate, symptom: weighed.symptom, ...signed })).job
          : job.trim()
      // What goes wrong from here on is tried again for this job, not for another new one.
      setJob(kept)
      if (enquiry.symptom !== null)
        await ask('fault-guide.keep-finding', {
          ...questionOf(enquiry, enquiry.symptom),
          job: kept,
          ...signed,
        })
      if (family !== undefined) await ask('jobs.need-part', { job: kept, family, ...signed })
      await queries.invalidateQueries({ queryKey: ['stock'] })
      return kept
    },
    onSuccess: kept => handOn({ to: 'Jobs', job: kept }),
  })
  const onSubmit = (event: FormEvent) => {
    event.preventDefault()
    if (!keep.isPending) keep.mutate()
  }
  return (
    <form className="keep-for-job" aria-label="Keep it for a job" onSubmit={onSubmit}>
      <label htmlFor={`${id}-job`}>Job no., empty for a new one</label>
      <input
        id={`${id}-job`}
        className="text-field number"
        autoComplete="off"
        maxLength={40}
        value={job}
        onChange={event => setJob(event.target.value)}
      />
      <label htmlFor={`${id}-initials`}>Initials</label>
      <input
        id={`${id}-initials`}
        className="text-field"
        autoComplete="off"
        maxLength={6}
        value={initials}
        onChange={event => setInitials(event.target.value)}
      />
      <button type="submit" className="order-button">
        Keep it for the job <KeyHint>Enter</KeyHint>
      </button>
      {keep.error !== null && (
        <p className="problem-note" role="alert">
          {keep.error.message}
        </p>
      )}
    </form>
  )
}
