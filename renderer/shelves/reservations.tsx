import { useQuery } from '@tanstack/react-query'
import { type FormEvent, useId, useState } from 'react'
import { ask } from '../bridge/client.ts'
import { wordMoment } from './shelf-words.ts'
import { useStockChange } from './use-stock-change.ts'

interface ReservationsProps {
  readonly part: string
  readonly places: readonly string[]
  readonly signed: { readonly initials?: string }
}

/** For whom pieces of a part are kept, to be released, and a form to keep more. */
export function Reservations({ part, places, signed }: ReservationsProps) {
  const kept = useQuery({
    queryKey: ['stock', 'reservations', part],
    queryFn: () => ask('stock-ledger.list-reservations', { part }),
    staleTime: 0,
  })
  const release = useStockChange((reservationId: string) =>
    ask('stock-ledger.release-reservation', { reservationId, ...signed }),
  )
  const reservations = kept.data?.reservations ?? []
  return (
    <section aria-labelledby="reservations">
      <h3 id="reservations" className="stock-heading">
        Kept for somebody
      </h3>
      {reservations.length === 0 ? (
        <p className="quiet">Nothing is kept.</p>
      ) : (
        <ul className="kept-list">
          {reservations.map(
            ({ reservationId, quantity, location, heldFor, reference, recordedAt, initials }) => (
              <li key={reservationId}>
                {quantity} in <span className="number">{location}</span> for {heldFor}{' '}
                <span className="number">{reference}</span>{' '}
                <span className="quiet">
                  since {wordMoment(recordedAt)} {initials}
                </span>{' '}
                <button type="button" className="plain-button" onClick={() => release.mutate(reservationId)}>
                  Release<span className="unseen"> what is kept for {reference}</span>
                </button>
              </li>
            ),
          )}
        </ul>
      )}
      {release.error !== null && (
        <p className="problem-note" role="alert">
          {release.error.message}
        </p>
      )}
      {places.length > 0 && <KeepForm part={part} places={places} signed={signed} />}
    </section>
  )
}

function KeepForm({ part, places, signed }: ReservationsProps) {
  const id = useId()
  const [isOpen, setOpen] = useState(false)
  const [draft, setDraft] = useState({
    quantity: '1',
    location: places[0] ?? '',
    heldFor: 'job',
    reference: '',
  })
  const keep = useStockChange(
    () =>
      ask('stock-ledger.reserve-part', {
        ...{ part, location: draft.location, reference: draft.reference, quantity: Number(draft.quantity) },
        heldFor: draft.heldFor === 'job' ? 'job' : 'customer',
        ...signed,
      }),
    () => {
      setOpen(false)
      setDraft({ ...draft, quantity: '1', reference: '' })
    },
  )
  const set = (changed: Partial<typeof draft>) => setDraft({ ...draft, ...changed })
  const onSubmit = (event: FormEvent) => {
    event.preventDefault()
    if (!keep.isPending) keep.mutate(undefined)
  }
  if (!isOpen)
    return (
      <button type="button" className="plain-button" onClick={() => setOpen(true)}>
        Keep some…
      </button>
    )
  return (
    <form className="stock-form" aria-label="Keep pieces" onSubmit={onSubmit}>
      <div className="stock-form__field stock-form__field--short">
        <label htmlFor={`${id}-quantity`}>Pieces</label>
        <input
          id={`${id}-quantity`}
          className="text-field"
          // biome-ignore lint/a11y/noAutofocus: the person has just asked for this very form
          autoFocus
          inputMode="numeric"
          value={draft.quantity}
          onChange={event => set({ quantity: event.target.value })}
        />
      </div>
      <div className="stock-form__field">
        <label htmlFor={`${id}-location`}>In</label>
        <select
          id={`${id}-location`}
          className="text-field"
          value={draft.location}
          onChange={event => set({ location: event.target.value })}
        >
          {places.map(place => (
            <option key={place}>{place}</option>
          ))}
        </select>
      </div>
      <div className="stock-form__field">
        <label htmlFor={`${id}-for`}>For a</label>
        <select
          id={`${id}-for`}
          className="text-field"
          value={draft.heldFor}
          onChange={event => set({ heldFor: event.target.value })}
        >
          <option>job</option>
          <option>customer</option>
        </select>
      </div>
      <div className="stock-form__field">
        <label htmlFor={`${id}-reference`}>Its number or name</label>
        <input
          id={`${id}-reference`}
          className="text-field number"
          maxLength={60}
          value={draft.reference}
          onChange={event => set({ reference: event.target.value })}
        />
      </div>
      <button type="submit" className="order-button">
        Keep
      </button>
      {keep.error !== null && (
        <p className="problem-note" role="alert">
          {keep.error.message}
        </p>
      )}
    </form>
  )
}
