import { useMutation } from '@tanstack/react-query'
import type { FormEvent } from 'react'
import { type ReturnKind, returnKind } from '../../shared-schemas/returns.ts'
import { KeyHint } from '../components/key-hint.tsx'
import { kindWords } from './return-words.ts'
import type { ReturnDraft, Returns } from './use-returns.ts'

interface TakeReturnProps {
  readonly returns: Returns
  readonly onUndo: () => void
}

/** What came back, from whom and why. It goes into quarantine, whatever it is. */
export function TakeReturn({ returns, onUndo }: TakeReturnProps) {
  const { draft, change, jobModel } = returns
  const take = useMutation({ mutationFn: returns.take, networkMode: 'always' })
  const isOurs = draft.kind === 'for-supplier'
  const places = isOurs
    ? returns.locations.filter(({ kind }) => kind !== 'quarantine').map(({ location }) => location)
    : ['customer', 'job']
  const field = (name: Exclude<keyof ReturnDraft, 'kind'>) => ({
    id: `return-${name}`,
    autoComplete: 'off',
    value: draft[name],
    onChange: (event: { readonly target: { readonly value: string } }) =>
      change({ [name]: event.target.value }),
  })
  const chooseKind = (kind: ReturnKind) => {
    const wasOurs = isOurs
    change({ kind })
    if ((kind === 'for-supplier') !== wasOurs)
      change({ from: kind === 'for-supplier' ? firstShelf(returns) : 'customer' })
  }
  const onSubmit = (event: FormEvent) => {
    event.preventDefault()
    if (!take.isPending) take.mutate()
  }
  return (
    <form className="move-form" aria-labelledby="take-return" onSubmit={onSubmit}>
      <h2 id="take-return" className="stock-heading">
        A part comes back <KeyHint>F2</KeyHint>
      </h2>
      <label htmlFor="return-part">Part, or scan it</label>
      <input {...field('part')} className="text-field number" spellCheck={false} maxLength={60} />
      <label htmlFor="return-quantity">Pieces</label>
      <input {...field('quantity')} className="text-field" inputMode="numeric" maxLength={4} />
      <label htmlFor="return-kind">Why</label>
      <select
        id="return-kind"
        className="text-field"
        value={draft.kind}
        onChange={event => chooseKind(returnKind.parse(event.target.value))}
      >
        {Object.entries(kindWords).map(([kind, words]) => (
          <option key={kind} value={kind}>
            {words}
          </option>
        ))}
      </select>
      <label htmlFor="return-from">From</label>
      <select {...field('from')} className="text-field">
        {places.map(place => (
          <option key={place}>{place}</option>
        ))}
      </select>
      {!isOurs && (
        <>
          <label htmlFor="return-reference">Which {draft.from}</label>
          <input {...field('reference')} className="text-field number" maxLength={60} />
        </>
      )}
      {draft.kind === 'wrong-fit' && (
        <>
          <label htmlFor="return-model">Model no. it did not fit</label>
          <input
            {...field('model')}
            className="text-field number"
            spellCheck={false}
            maxLength={200}
            placeholder={jobModel == null ? 'whole, as on the plate' : jobModel.modelNumber}
          />
        </>
      )}
      <label htmlFor="return-reason">In words</label>
      <input {...field('reason')} className="text-field" required maxLength={400} />
      <label htmlFor="return-initials">Initials</label>
      <input
        id="return-initials"
        className="text-field stock-short"
        required
        maxLength={6}
        autoComplete="off"
        value={returns.initials}
        onChange={event => returns.setInitials(event.target.value)}
      />
      <p className="stock-acts">
        <button type="submit" className="order-button order-button--main">
          Into quarantine <KeyHint>Enter</KeyHint>
        </button>
        <button type="button" className="order-button" aria-keyshortcuts="F10" onClick={onUndo}>
          Take the last step back <KeyHint>F10</KeyHint>
        </button>
      </p>
      <p className="stock-form__said" role="status">
        {take.error === null ? returns.done : ''}
      </p>
      {take.error !== null && (
        <p className="problem-note" role="alert">
          {take.error.message}
        </p>
      )}
    </form>
  )
}

function firstShelf({ locations }: Returns): string {
  return locations.find(({ kind }) => kind === 'shop')?.location ?? ''
}
