import { useMutation } from '@tanstack/react-query'
import { type FormEvent, type KeyboardEvent, useId, useState } from 'react'
import type { DecisionWay, PartReturn } from '../../shared-schemas/returns.ts'
import { KeyHint } from '../components/key-hint.tsx'
import { unlessScanned } from '../scanning/use-scans.ts'
import { wordMoment } from '../shelves/shelf-words.ts'
import { usualReasons, wayWords, wordDecided, wordReturn } from './return-words.ts'
import type { Returns } from './use-returns.ts'

const ways: Readonly<Record<string, DecisionWay>> = { B: 'to-shelf', T: 'to-supplier', X: 'scrap' }

interface ReturnLineProps {
  readonly one: PartReturn
  readonly returns: Returns
}

/** One return: what it is, and what is decided about it, each way by one key and with its reason. */
export function ReturnLine({ one, returns }: ReturnLineProps) {
  const [way, setWay] = useState<DecisionWay | null>(null)
  const isOpen = one.undecided > 0
  const onKeyDown = (event: KeyboardEvent) => {
    if (!isOpen || !(event.target instanceof HTMLButtonElement)) return
    const chosen = event.ctrlKey || event.altKey || event.metaKey ? undefined : ways[event.key.toUpperCase()]
    if (chosen === undefined) return
    event.preventDefault()
    // The first key of a scan looks like one that was pressed: it must choose nothing.
    unlessScanned(() => setWay(chosen))
  }
  return (
    <li
      className="variance"
      data-return={one.partNumber}
      data-undecided={isOpen || undefined}
      data-settled={!isOpen || undefined}
      onKeyDown={onKeyDown}
    >
      <p>
        <span className="number stock-number">{one.partNumber}</span> {one.description}
      </p>
      <p>
        {wordReturn(one)}{' '}
        <span className="quiet">
          {wordMoment(one.returnedAt)} {one.initials}
        </span>
      </p>
      <p className="variance__by">
        <strong>{wordDecided(one)}</strong>
      </p>
      {isOpen && (
        <div className="variance__choices">
          {Object.entries(ways).map(([key, to]) => (
            <button
              key={key}
              type="button"
              className="variance__choice"
              aria-keyshortcuts={key}
              aria-pressed={way === to}
              onClick={() => setWay(to)}
            >
              <KeyHint>{key}</KeyHint> {wayWords[to]}
            </button>
          ))}
        </div>
      )}
      {isOpen && way !== null && <Decide key={way} {...{ one, returns, way }} onLeave={() => setWay(null)} />}
    </li>
  )
}

interface DecideProps extends ReturnLineProps {
  readonly way: DecisionWay
  readonly onLeave: () => void
}

function Decide({ one, returns, way, onLeave }: DecideProps) {
  const id = useId()
  const shelves = returns.locations.filter(({ kind }) => kind !== 'quarantine')
  const [draft, setDraft] = useState({
    quantity: String(one.undecided),
    to: shelves[0]?.location ?? '',
    reason: '',
    reference: '',
  })
  const set = (changed: Partial<typeof draft>) => setDraft({ ...draft, ...changed })
  const decide = useMutation({
    mutationFn: () =>
      returns.decide({
        ...{ returnId: one.returnId, way, reason: draft.reason, quantity: Number(draft.quantity) },
        ...(way === 'to-shelf' ? { to: draft.to } : {}),
        ...(draft.reference.trim() === '' ? {} : { reference: draft.reference }),
      }),
    networkMode: 'always',
    onSuccess: onLeave,
  })
  const onSubmit = (event: FormEvent) => {
    event.preventDefault()
    if (!decide.isPending) decide.mutate()
  }
  return (
    <form
      className="stock-form"
      aria-label={wayWords[way]}
      onSubmit={onSubmit}
      onKeyDown={event => {
        if (event.key !== 'Escape') return
        event.stopPropagation()
        onLeave()
      }}
    >
      <div className="stock-form__field">
        <label htmlFor={`${id}-reason`}>Why</label>
        <input
          id={`${id}-reason`}
          className="text-field"
          // biome-ignore lint/a11y/noAutofocus: the person has just asked for this very field
          autoFocus
          required
          maxLength={400}
          list={`${id}-reasons`}
          value={draft.reason}
          onChange={event => set({ reason: event.target.value })}
        />
        <datalist id={`${id}-reasons`}>
          {usualReasons[way].map(reason => (
            <option key={reason} value={reason} />
          ))}
        </datalist>
      </div>
      {way === 'to-shelf' && (
        <div className="stock-form__field">
          <label htmlFor={`${id}-to`}>Where to</label>
          <select
            id={`${id}-to`}
            className="text-field"
            value={draft.to}
            onChange={event => set({ to: event.target.value })}
          >
            {shelves.map(({ location, name }) => (
              <option key={location} value={location}>
                {name}
              </option>
            ))}
          </select>
        </div>
      )}
      {way === 'to-supplier' && (
        <div className="stock-form__field">
          <label htmlFor={`${id}-reference`}>Number under which it is taken back</label>
          <input
            id={`${id}-reference`}
            className="text-field number"
            maxLength={60}
            value={draft.reference}
            onChange={event => set({ reference: event.target.value })}
          />
        </div>
      )}
      <div className="stock-form__field stock-form__field--short">
        <label htmlFor={`${id}-quantity`}>Pieces</label>
        <input
          id={`${id}-quantity`}
          className="text-field"
          inputMode="numeric"
          value={draft.quantity}
          onChange={event => set({ quantity: event.target.value })}
        />
      </div>
      {returns.initials === '' && (
        <p className="quiet stock-form__said">Sign with your initials in the form first.</p>
      )}
      <button type="submit" className="order-button order-button--main">
        {wayWords[way]} <KeyHint>Enter</KeyHint>
      </button>
      {decide.error !== null && (
        <p className="problem-note" role="alert">
          {decide.error.message}
        </p>
      )}
    </form>
  )
}
