import { useMutation } from '@tanstack/react-query'
import { type FormEvent, type HTMLAttributes, type ReactNode, useId } from 'react'

interface KeptFormProps {
  readonly label: string
  /** What is wrong with it as it stands, in a sentence; undefined where nothing is. */
  readonly fault: string | undefined
  readonly isChanged: boolean
  readonly onKeep: () => Promise<unknown>
  readonly children: ReactNode
}

/** A small form that is kept whole or not at all, and says in place what is wrong with it. */
export function KeptForm({ label, fault, isChanged, onKeep, children }: KeptFormProps) {
  const keep = useMutation({ mutationFn: onKeep, networkMode: 'always' })
  const wrong = fault ?? keep.error?.message
  const onSubmit = (event: FormEvent) => {
    event.preventDefault()
    if (fault === undefined && !keep.isPending) keep.mutate()
  }
  return (
    <form className="stock-form" aria-label={label} onSubmit={onSubmit}>
      {children}
      <button type="submit" className="order-button" disabled={keep.isPending}>
        Keep
      </button>
      <p role="status">{keep.isSuccess && !isChanged ? 'Kept.' : ''}</p>
      {wrong !== undefined && (
        <p className="problem-note" role="alert">
          {wrong} {fault === undefined && 'Nothing was changed.'}
        </p>
      )}
    </form>
  )
}

interface KeptFieldProps {
  readonly label: string
  readonly value: string
  readonly onChange: (value: string) => void
  readonly longest: number
  readonly isShort?: boolean
  readonly inputMode?: HTMLAttributes<HTMLInputElement>['inputMode']
  readonly placeholder?: string
}

export function KeptField({ label, value, onChange, longest, isShort = false, ...shown }: KeptFieldProps) {
  const id = useId()
  return (
    <p className={isShort ? 'stock-form__field stock-form__field--short' : 'stock-form__field'}>
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        className="text-field"
        maxLength={longest}
        autoComplete="off"
        {...shown}
        value={value}
        onChange={event => onChange(event.target.value)}
      />
    </p>
  )
}

interface KeptChoiceProps<Value extends string> {
  readonly label: string
  readonly value: Value
  readonly words: Readonly<Record<Value, string>>
  readonly onChange: (value: Value) => void
}

export function KeptChoice<Value extends string>({ label, value, words, onChange }: KeptChoiceProps<Value>) {
  const id = useId()
  return (
    <p className="stock-form__field">
      <label htmlFor={id}>{label}</label>
      <WordedSelect id={id} value={value} words={words} onChange={onChange} />
    </p>
  )
}

/** A choice among values, each by its words. */
export function WordedSelect<Value extends string>({
  value,
  words,
  onChange,
  ...named
}: Omit<KeptChoiceProps<Value>, 'label'> & { readonly id?: string; readonly 'aria-label'?: string }) {
  const values = Object.keys(words) as Value[]
  return (
    <select
      {...named}
      className="text-field"
      value={value}
      onChange={event => {
        const chosen = values.find(known => known === event.target.value)
        if (chosen !== undefined) onChange(chosen)
      }}
    >
      {values.map(known => (
        <option key={known} value={known}>
          {words[known]}
        </option>
      ))}
    </select>
  )
}
