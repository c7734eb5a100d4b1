import { useMutation, useQueryClient } from '@tanstack/react-query'
import { type FormEvent, useEffect, useId, useState } from 'react'
import type { FitAnswer } from '../../shared-schemas/fit-check.ts'
import { ask } from '../bridge/client.ts'
import { KeyHint } from '../components/key-hint.tsx'
import { type Became, becameWords, findMissing, type Told, tellOf } from './tell-what-became.ts'

/** F7: what became of this part in this model, for the next one who asks: it was fitted, came back, or that is settled. */
export function RecordFit({ answer }: { readonly answer: FitAnswer }) {
  const [isOpen, setOpen] = useState(false)
  const [recorded, setRecorded] = useState('')
  useRecordKey(() => setOpen(true))
  if (answer.model === null || answer.part.partNumber === null) return null
  if (isOpen)
    return (
      <RecordForm
        answer={answer}
        onDone={words => {
          setOpen(false)
          setRecorded(words)
        }}
      />
    )
  return (
    <>
      <button
        type="button"
        className="plain-button"
        aria-keyshortcuts="F7"
        onClick={() => {
          setRecorded('')
          setOpen(true)
        }}
      >
        What became of it… <KeyHint>F7</KeyHint>
      </button>
      <span role="status">{recorded}</span>
    </>
  )
}

interface RecordFormProps {
  readonly answer: FitAnswer
  readonly onDone: (words: string) => void
}

function RecordForm({ answer, onDone }: RecordFormProps) {
  const [told, setTold] = useState<Told>({ became: 'confirmed', job: '', words: '', initials: '' })
  const [missing, setMissing] = useState<string>()
  const client = useQueryClient()
  const record = useMutation({
    mutationFn: () => tellOf(answer, told, ask),
    networkMode: 'always',
    onSuccess: async () => {
      // Every verdict on the part may carry one caution more or less now.
      await client.invalidateQueries({
        predicate: ({ queryKey }) => `${queryKey[0]}`.startsWith('fit-check.'),
      })
      onDone(`Recorded: ${becameWords[told.became]}.`)
    },
  })
  const onSubmit = (event: FormEvent) => {
    event.preventDefault()
    const missing = findMissing(told)
    setMissing(missing)
    if (missing === undefined && !record.isPending) record.mutate()
  }
  const change = (part: Partial<Told>) => setTold(before => ({ ...before, ...part }))
  const isReturned = answer.cautions.some(({ recordId }) => recordId !== undefined)
  const choices: readonly Became[] = isReturned
    ? ['confirmed', 'wrong-fit', 'settled']
    : ['confirmed', 'wrong-fit']
  return (
    <form className="record-fit" aria-label="What became of it" onSubmit={onSubmit}>
      <fieldset className="record-fit__choices">
        <legend>What became of it</legend>
        {choices.map(became => (
          <label key={became}>
            <input
              type="radio"
              name="became"
              // biome-ignore lint/a11y/noAutofocus: the person has just asked for this very form
              autoFocus={became === told.became}
              checked={became === told.became}
              onChange={() => change({ became })}
            />{' '}
            {becameWords[became]}
          </label>
        ))}
      </fieldset>
      {told.became !== 'settled' && (
        <RecordField label="Job" value={told.job} longest={40} onType={job => change({ job })} />
      )}
      {told.became !== 'confirmed' && (
        <RecordField
          label={told.became === 'settled' ? 'How it was settled' : 'Why it did not fit'}
          value={told.words}
          longest={400}
          onType={words => change({ words })}
        />
      )}
      <RecordField
        label="Initials"
        value={told.initials}
        longest={6}
        onType={initials => change({ initials })}
      />
      <p>
        <button type="submit" className="plain-button">
          Record
        </button>
        <button type="button" className="plain-button" onClick={() => onDone('')}>
          Leave it
        </button>
      </p>
      {(missing !== undefined || record.error !== null) && (
        <p className="problem-note" role="alert">
          {missing ?? record.error?.message}
        </p>
      )}
    </form>
  )
}

interface RecordFieldProps {
  readonly label: string
  readonly value: string
  readonly longest: number
  readonly onType: (text: string) => void
}

function RecordField({ label, value, longest, onType }: RecordFieldProps) {
  const id = useId()
  return (
    <>
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        className="text-field"
        maxLength={longest}
        value={value}
        onChange={event => onType(event.target.value)}
      />
    </>
  )
}

function useRecordKey(onOpen: () => void): void {
  useEffect(() => {
    const act = (event: KeyboardEvent) => {
      if (event.key !== 'F7' || event.isComposing || event.altKey || event.ctrlKey || event.metaKey) return
      event.preventDefault()
      onOpen()
    }
    document.addEventListener('keydown', act)
    return () => document.removeEventListener('keydown', act)
  }, [onOpen])
}
