import { useMutation, useQueryClient } from '@tanstack/react-query'
import { type FormEvent, useEffect, useId, useState } from 'react'
import type { FitAnswer } from '../../shared-schemas/fit-check.ts'
import { ask } from '../bridge/client.ts'
import { KeyHint } from '../components/key-hint.tsx'
import {
  becameWords,
  findCorrection,
  findMissing,
  listChoices,
  type Told,
  tellOf,
  wordsAsked,
} from './tell-what-became.ts'

/**
 * F7: what became of this part in this model, for the next one who asks: it was fitted, came back, or that is settled;
 * or it must not go in at all, against the catalogue, and that is withdrawn again.
 */
export function RecordFit({ answer }: { readonly answer: FitAnswer }) {
  const [isOpen, setOpen] = useState(false)
  const [recorded, setRecorded] = useState('')
  useRecordKey(() => {
    setRecorded('')
    setOpen(true)
  })
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
  const correction = answer.verdict === 'does-not-fit' ? findCorrection(answer) : undefined
  return (
    <>
      {correction !== undefined && (
        <p>
          Refused by a correction of this shop ({correction.source}). It can be withdrawn, and stays in the
          history.
        </p>
      )}
      <button
        type="button"
        className="plain-button"
        aria-keyshortcuts="F7"
        onClick={() => {
          setRecorded('')
          setOpen(true)
        }}
      >
        {correction === undefined ? 'What became of it…' : 'Withdraw, or record what became of it…'}{' '}
        <KeyHint>F7</KeyHint>
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
  const correction = findCorrection(answer)
  // What a correction refuses was hardly fitted: most likely the correction itself is what is wrong.
  const becameFirst =
    answer.verdict === 'does-not-fit' && correction !== undefined ? 'withdrawn' : 'confirmed'
  const [told, setTold] = useState<Told>({ became: becameFirst, job: '', words: '', initials: '' })
  const [missing, setMissing] = useState<string>()
  const client = useQueryClient()
  // Every verdict on the part may carry one caution more or less now.
  const askAnew = () =>
    client.invalidateQueries({ predicate: ({ queryKey }) => `${queryKey[0]}`.startsWith('fit-check.') })
  const record = useMutation({
    mutationFn: () => tellOf(answer, told, ask),
    networkMode: 'always',
    onSuccess: async () => {
      await askAnew()
      onDone(`Recorded: ${becameWords[told.became]}.`)
    },
    // What was refused, somebody else has changed meanwhile.
    onError: askAnew,
  })
  const onSubmit = (event: FormEvent) => {
    event.preventDefault()
    const missing = findMissing(told)
    setMissing(missing)
    if (missing === undefined && !record.isPending) record.mutate()
  }
  const change = (part: Partial<Told>) => setTold(before => ({ ...before, ...part }))
  return (
    <form className="record-fit" aria-label="What became of it" onSubmit={onSubmit}>
      <fieldset className="record-fit__choices">
        <legend>What became of it</legend>
        {listChoices(answer).map(became => (
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
      {told.became === 'excluded' && (
        <p>Corrects the catalogue: from now on the verdict is “Does not fit”, whatever a supplier lists.</p>
      )}
      {told.became === 'withdrawn' && correction !== undefined && (
        <p>
          Withdraws <span className="number">{correction.part}</span>: {correction.source}. Both stay in the
          history.
        </p>
      )}
      {(told.became === 'confirmed' || told.became === 'wrong-fit') && (
        <RecordField label="Job" value={told.job} longest={40} onType={job => change({ job })} />
      )}
      {told.became !== 'confirmed' && (
        <RecordField
          label={wordsAsked[told.became]}
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
