import type { FormEvent } from 'react'
import { AskProblem } from '../bridge/ask-problem.ts'
import { KeyHint } from '../components/key-hint.tsx'
import type { MoveDraft, Moves } from './use-moves.ts'
import type { Shelves } from './use-shelves.ts'

interface MoveFormProps {
  readonly moves: Moves
  readonly shelves: Shelves
  readonly onUndo: () => void
}

/** A quick move: what, how many, from where, to where, and why. What is refused stays as it was written. */
export function MoveForm({ moves, shelves, onUndo }: MoveFormProps) {
  const { draft, change, problem, done, move, refuse } = moves
  const onSubmit = (event: FormEvent) => {
    event.preventDefault()
    const missing = findMissing(draft)
    if (missing === undefined) void move()
    else refuse(missing)
  }
  const code = problem instanceof AskProblem ? problem.problem.code : null
  const field = (name: keyof MoveDraft) => ({
    id: `move-${name}`,
    autoComplete: 'off',
    value: draft[name],
    onChange: (event: { readonly target: { readonly value: string } }) =>
      change({ [name]: event.target.value }),
  })
  return (
    <form className="move-form" aria-labelledby="move-form" onSubmit={onSubmit}>
      <h2 id="move-form" className="stock-heading">
        Quick move <KeyHint>F2</KeyHint>
      </h2>
      <label htmlFor="move-quantity">Pieces</label>
      <input {...field('quantity')} className="text-field" inputMode="numeric" maxLength={6} />
      <label htmlFor="move-part">Part</label>
      <input {...field('part')} className="text-field number" spellCheck={false} maxLength={60} />
      <label htmlFor="move-from">From</label>
      <input {...field('from')} className="text-field number" list="move-places" maxLength={40} />
      <label htmlFor="move-to">To</label>
      <input {...field('to')} className="text-field number" list="move-places" maxLength={40} />
      <label htmlFor="move-reference">Job, customer or order</label>
      <input {...field('reference')} className="text-field number" maxLength={60} />
      <label htmlFor="move-reason">Why</label>
      <input {...field('reason')} className="text-field" maxLength={400} />
      <label htmlFor="move-initials">Initials</label>
      <input
        id="move-initials"
        className="text-field stock-short"
        maxLength={6}
        autoComplete="off"
        value={shelves.initials}
        onChange={event => shelves.setInitials(event.target.value)}
      />
      <datalist id="move-places">
        {shelves.locations.map(({ location, name }) => (
          <option key={location} value={location}>
            {name}
          </option>
        ))}
        {['supplier', 'customer', 'job', 'scrap'].map(place => (
          <option key={place} value={place} />
        ))}
      </datalist>
      <p className="stock-acts">
        <button type="submit" className="order-button order-button--main">
          Move <KeyHint>Enter</KeyHint>
        </button>
        <button type="button" className="order-button" aria-keyshortcuts="F10" onClick={onUndo}>
          Take the last one back <KeyHint>F10</KeyHint>
        </button>
      </p>
      <p className="stock-form__said" role="status">
        {done}
      </p>
      {problem !== null && (
        <div className="problem-note" role="alert">
          <p>{problem.message}</p>
          {code === 'not-enough-on-hand' && (
            <button
              type="button"
              className="plain-button"
              onClick={() => void move({ usedBeforeBooked: true })}
            >
              It was used before it was booked
            </button>
          )}
          {code === 'kept-for-others' && (
            <button type="button" className="plain-button" onClick={() => void move({ takeReserved: true })}>
              Take it all the same
            </button>
          )}
        </div>
      )}
    </form>
  )
}

/** What is still wanted, field by field; what only the book knows it says itself. */
function findMissing({ part, quantity, from, to, reason }: MoveDraft): string | undefined {
  if (!/^[1-9]\d{0,5}$/.test(quantity.trim())) return 'How many pieces? Type a whole number from 1.'
  if (part.trim() === '') return 'Which part? Type its number or scan it.'
  if (from.trim() === '' || to.trim() === '') return 'Say where it comes from and where it goes.'
  if (reason.trim() === '') return 'Say why in a few words; it stands in the ledger.'
  return undefined
}
