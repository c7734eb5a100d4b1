import { type FormEvent, useState } from 'react'
import type { PartKnown } from '../../shared-schemas/reorder-settings.ts'
import { ask } from '../bridge/client.ts'
import { pieces as wordPieces } from './line-words.ts'
import type { PartChange } from './use-part-changes.ts'
import { readQuantity } from './use-reorder.ts'

interface ShelfLimitProps {
  readonly known: PartKnown
  readonly onChange: (change: PartChange) => void
}

/** How many pieces the part's shelf holds; an empty field is any number. */
export function ShelfLimit({ known, onChange }: ShelfLimitProps) {
  const { partNumber, shelfLimit } = known
  const before = shelfLimit === null ? '' : String(shelfLimit)
  const [typed, setTyped] = useState(before)
  const limit = typed.trim() === '' ? null : readQuantity(typed)
  const id = `shelf-limit-${partNumber.replaceAll(/\W/g, '-')}`
  const onSubmit = (event: FormEvent) => {
    event.preventDefault()
    if (limit === undefined || limit === shelfLimit) return
    onChange({
      words:
        limit === null
          ? `The shelf of ${partNumber} has no limit.`
          : `The shelf of ${partNumber} holds ${wordPieces(limit)}.`,
      make: () => ask('reorder.set-shelf-limit', { part: partNumber, pieces: limit }),
      takeBack: () => ask('reorder.set-shelf-limit', { part: partNumber, pieces: shelfLimit }),
    })
  }
  return (
    <form className="stock-form" aria-label={`Shelf of ${partNumber}`} onSubmit={onSubmit}>
      <p className="stock-form__field stock-form__field--short">
        <label htmlFor={id}>Its shelf holds</label>
        <input
          id={id}
          className="text-field"
          inputMode="numeric"
          maxLength={6}
          autoComplete="off"
          placeholder="any"
          aria-invalid={limit === undefined || undefined}
          value={typed}
          onChange={event => setTyped(event.target.value)}
        />
      </p>
      {typed.trim() !== before && (
        <button type="submit" className="order-button">
          Keep the limit
        </button>
      )}
      {limit === undefined && (
        <p className="problem-note" role="alert">
          Write a whole number of pieces, or leave it empty for any number.
        </p>
      )}
    </form>
  )
}
