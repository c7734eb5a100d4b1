import { useMutation, useQuery } from '@tanstack/react-query'
import { type FormEvent, useEffect, useRef, useState } from 'react'
import { ask } from '../bridge/client.ts'
import { KeyHint } from '../components/key-hint.tsx'
import { useSettled } from '../components/use-settled.ts'
import type { JobFacts, Jobs } from './use-jobs.ts'

const fields = {
  brand: 'Brand',
  serial: 'Serial number',
  made: 'Made',
  volts: 'Volts',
  hertz: 'Hertz',
  watts: 'Watts',
} as const
type PlateField = keyof typeof fields

/** The facts of a new job, or of one that is open: what the plate says, what is wrong, and for whom, by a reference only. */
export function JobFactsForm({ jobs }: { readonly jobs: Jobs }) {
  const { job } = jobs
  const [own, setOwn] = useState('')
  const [draft, setDraft] = useState({
    model: job?.model ?? '',
    symptom: job?.symptom ?? '',
    customer: job?.customer ?? '',
    van: job?.van ?? '',
    date: job?.date ?? '',
    ...Object.fromEntries(plateFields.map(name => [name, job?.[name] ?? ''])),
  } as Record<Exclude<keyof JobFacts, 'measured'>, string>)
  const first = useRef<HTMLInputElement>(null)
  useEffect(() => first.current?.focus(), [])
  const write = useMutation({
    mutationFn: () =>
      job === undefined ? jobs.open(asFacts(draft), own.trim()) : jobs.change(asFacts(draft)),
    networkMode: 'always',
  })
  const field = (name: keyof typeof draft) => ({
    id: `job-${name}`,
    autoComplete: 'off',
    value: draft[name],
    onChange: (event: { readonly target: { readonly value: string } }) =>
      setDraft({ ...draft, [name]: event.target.value }),
  })
  const onSubmit = (event: FormEvent) => {
    event.preventDefault()
    if (!write.isPending) write.mutate()
  }
  return (
    <section className="shelf" aria-labelledby="job-form">
      <h2 id="job-form" className="stock-sentence">
        {job === undefined ? 'A new job' : `Job ${job.job}`}
      </h2>
      <form className="move-form" aria-labelledby="job-form" onSubmit={onSubmit}>
        <label htmlFor="job-model">Model no. on the plate</label>
        <input
          {...field('model')}
          ref={first}
          className="text-field number"
          spellCheck={false}
          maxLength={200}
          placeholder="as it is read; ? for a character that cannot be"
        />
        <WhatItLeavesOpen model={draft.model} brand={draft.brand} />
        <label htmlFor="job-symptom">What is wrong</label>
        <input {...field('symptom')} className="text-field" maxLength={400} />
        <label htmlFor="job-van">Van</label>
        <select {...field('van')} className="text-field">
          <option value="">not said</option>
          {jobs.usable.map(({ location, name }) => (
            <option key={location} value={location}>
              {name}
            </option>
          ))}
        </select>
        <label htmlFor="job-customer">Customer's reference</label>
        <input
          {...field('customer')}
          className="text-field"
          maxLength={60}
          placeholder="a card number; no name is needed"
        />
        <label htmlFor="job-date">Date; today if left empty</label>
        <input {...field('date')} className="text-field" type="date" />
        {plateFields.map(name => (
          <PlateFieldRow key={name} name={name} field={field(name)} />
        ))}
        {job === undefined && (
          <>
            <label htmlFor="job-own">Its number</label>
            <input
              id="job-own"
              className="text-field number"
              maxLength={40}
              autoComplete="off"
              placeholder="left empty, it is given one"
              value={own}
              onChange={event => setOwn(event.target.value)}
            />
          </>
        )}
        <p className="stock-acts">
          <button type="submit" className="order-button order-button--main">
            {job === undefined ? 'Open the job' : 'Keep'} <KeyHint>Enter</KeyHint>
          </button>
          <button type="button" className="order-button" onClick={() => jobs.setWriting(false)}>
            Leave <KeyHint>Esc</KeyHint>
          </button>
        </p>
        {write.error !== null && (
          <p className="problem-note" role="alert">
            {write.error.message}
          </p>
        )}
      </form>
    </section>
  )
}

const plateFields = Object.keys(fields) as PlateField[]

function PlateFieldRow({ name, field }: { readonly name: PlateField; readonly field: object }) {
  return (
    <>
      <label htmlFor={`job-${name}`}>{fields[name]}</label>
      <input {...field} className="text-field number" maxLength={60} />
    </>
  )
}

/** What the look-up makes of the number while it is typed. It never changes what was typed. */
function WhatItLeavesOpen({ model, brand }: { readonly model: string; readonly brand: string }) {
  const asked = useSettled({ text: model.trim(), brand: brand.trim() }, 200)
  const found = useQuery({
    queryKey: ['model-lookup.find-models', 'job', asked],
    queryFn: () =>
      ask('model-lookup.find-models', {
        text: asked.text,
        ...(asked.brand === '' ? {} : { brand: asked.brand }),
        top: 3,
      }),
    enabled: asked.text.length > 1,
  })
  return (
    <p role="status" className="job-form__models">
      {asked.text.length > 1 && (found.error === null ? wordFound(found.data) : found.error.message)}
    </p>
  )
}

function wordFound(found: Awaited<ReturnType<typeof askModels>> | undefined): string {
  if (found === undefined) return ''
  const [best] = found.candidates
  if (best === undefined)
    return 'No model in the catalogue agrees with that; it may be written down all the same.'
  const named = `${best.brand} ${best.modelNumber}, ${best.applianceType}`
  if (found.outcome === 'exact') return `${named}.`
  return found.outcome === 'several'
    ? `${found.openModels} models agree so far; first ${named}.`
    : `Nearest: ${named}. Compare it with the plate.`
}

const askModels = (text: string) => ask('model-lookup.find-models', { text })

/** What was left empty is not known. */
function asFacts(draft: Readonly<Record<string, string>>): JobFacts {
  return Object.fromEntries(
    Object.entries(draft).flatMap(([name, text]) => (text.trim() === '' ? [] : [[name, text.trim()]])),
  ) as JobFacts
}
