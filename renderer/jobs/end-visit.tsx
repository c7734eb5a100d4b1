import { useMutation } from '@tanstack/react-query'
import { type FormEvent, useEffect, useRef, useState } from 'react'
import type { Job, WhyNot } from '../../shared-schemas/jobs.ts'
import { ask } from '../bridge/client.ts'
import { KeyHint } from '../components/key-hint.tsx'
import { reasonsOf, whyWords, wordEnded } from './job-words.ts'
import { useGuideCauses } from './use-guide-causes.ts'
import type { Jobs } from './use-jobs.ts'

interface EndVisitProps {
  readonly job: Job
  readonly jobs: Jobs
}

type Outcome = 'finished' | 'not-finished' | 'given-up'

const outcomes: Readonly<Record<Outcome, string>> = {
  finished: 'The appliance works',
  'not-finished': 'Not finished: there will be another visit',
  'given-up': 'Given up: it is not repaired',
}

/** How a visit ended: what was wrong, why it is not finished if it is not, and where what is in hand goes back to. */
export function EndVisit({ job, jobs }: EndVisitProps) {
  const [outcome, setOutcome] = useState<Outcome>('finished')
  const [draft, setDraft] = useState({ why: '', cause: '', note: '' })
  const guideCauses = useGuideCauses(job)
  const inHand = job.parts.filter(part => part.inHand > 0)
  const [places, setPlaces] = useState<Readonly<Record<string, string>>>({})
  const placeOf = (partNumber: string, takenFrom: string | null) =>
    places[partNumber] ?? takenFrom ?? jobs.takenFrom ?? ''
  const first = useRef<HTMLSelectElement>(null)
  useEffect(() => first.current?.focus(), [])
  const end = useMutation({
    mutationFn: async () => {
      const { why, cause, note } = draft
      const ended = await ask('jobs.end-visit', {
        ...{ job: job.job, outcome, initials: jobs.initials },
        ...(outcome === 'finished' || why === '' ? {} : { why: why as WhyNot }),
        ...(cause.trim() === '' ? {} : { cause }),
        ...(note.trim() === '' ? {} : { note }),
        back: inHand.flatMap(({ partNumber, takenFrom, inHand: quantity }) => {
          const to = placeOf(partNumber, takenFrom)
          return to === stays ? [] : [{ part: partNumber, quantity, to }]
        }),
      })
      await jobs.keep(ended.job)
      jobs.setDone(wordEnded(ended))
      jobs.setEnding(false)
    },
    networkMode: 'always',
  })
  const onSubmit = (event: FormEvent) => {
    event.preventDefault()
    if (!end.isPending) end.mutate()
  }
  const set = (changed: Partial<typeof draft>) => setDraft({ ...draft, ...changed })
  return (
    <form className="move-form" aria-labelledby="end-visit" onSubmit={onSubmit}>
      <h3 id="end-visit" className="stock-heading">
        How the visit ended
      </h3>
      <label htmlFor="end-outcome">Outcome</label>
      <select
        id="end-outcome"
        ref={first}
        className="text-field"
        value={outcome}
        onChange={event => setOutcome(event.target.value as Outcome)}
      >
        {Object.entries(outcomes).map(([name, words]) => (
          <option key={name} value={name}>
            {words}
          </option>
        ))}
      </select>
      {outcome !== 'finished' && (
        <>
          <label htmlFor="end-why">Why</label>
          <select
            id="end-why"
            className="text-field"
            required
            value={draft.why}
            onChange={event => set({ why: event.target.value })}
          >
            <option value="">choose</option>
            {reasonsOf[outcome].map(why => (
              <option key={why} value={why}>
                {whyWords[why]}
              </option>
            ))}
          </select>
        </>
      )}
      <label htmlFor="end-cause">What was wrong</label>
      <input
        id="end-cause"
        className="text-field"
        maxLength={400}
        placeholder="if you know"
        list="end-causes"
        value={draft.cause}
        onChange={event => set({ cause: event.target.value })}
      />
      <datalist id="end-causes">
        {guideCauses.map(cause => (
          <option key={cause} value={cause} />
        ))}
      </datalist>
      <label htmlFor="end-note">Note</label>
      <input
        id="end-note"
        className="text-field"
        maxLength={400}
        value={draft.note}
        onChange={event => set({ note: event.target.value })}
      />
      {inHand.map(({ partNumber, takenFrom, inHand: pieces }) => (
        <GoesBack
          key={partNumber}
          {...{ partNumber, pieces, places: jobs.usable }}
          mayStay={outcome === 'not-finished'}
          to={placeOf(partNumber, takenFrom)}
          onTo={to => setPlaces({ ...places, [partNumber]: to })}
        />
      ))}
      <label htmlFor="end-initials">Initials</label>
      <input
        id="end-initials"
        className="text-field stock-short"
        required
        maxLength={6}
        autoComplete="off"
        value={jobs.initials}
        onChange={event => jobs.setInitials(event.target.value)}
      />
      <p className="stock-acts">
        <button type="submit" className="order-button order-button--main">
          End the visit <KeyHint>Enter</KeyHint>
        </button>
        <button type="button" className="order-button" onClick={() => jobs.setEnding(false)}>
          Leave <KeyHint>Esc</KeyHint>
        </button>
      </p>
      {end.error !== null && (
        <p className="problem-note" role="alert">
          {end.error.message}
        </p>
      )}
    </form>
  )
}

/** For a part that waits for the next visit. */
const stays = ''

interface GoesBackProps {
  readonly partNumber: string
  readonly pieces: number
  readonly places: Jobs['usable']
  readonly mayStay: boolean
  readonly to: string
  readonly onTo: (to: string) => void
}

function GoesBack({ partNumber, pieces, places, mayStay, to, onTo }: GoesBackProps) {
  const id = `end-back-${partNumber}`
  return (
    <>
      <label htmlFor={id}>
        {pieces} × <span className="number">{partNumber}</span> in hand goes back to
      </label>
      <select id={id} className="text-field" value={to} onChange={event => onTo(event.target.value)}>
        {mayStay && <option value={stays}>nowhere: it stays with the job</option>}
        {places.map(({ location, name }) => (
          <option key={location} value={location}>
            {name}
          </option>
        ))}
      </select>
    </>
  )
}
