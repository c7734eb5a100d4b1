import type { KeyboardEvent, RefObject } from 'react'
import { KeyHint } from '../components/key-hint.tsx'
import type { CounterEnquiry, EnquiryStep } from './counter-enquiry.ts'
import { familyLines } from './fit-card.tsx'

interface CardFieldsProps {
  readonly enquiry: CounterEnquiry
  readonly filterField: RefObject<HTMLInputElement | null>
  readonly partField: RefObject<HTMLInputElement | null>
  readonly onStep: (step: EnquiryStep) => void
}

/** The two things to type beside the plate: words of what is wanted, and the number of a part that is at hand. */
export function CardFields({ enquiry, filterField, partField, onStep }: CardFieldsProps) {
  return (
    <div className="card-fields">
      <label className="card-field">
        <span className="card-field__name">
          What is wanted <KeyHint>Enter</KeyHint>
        </span>
        <input
          ref={filterField}
          className="text-field"
          autoComplete="off"
          maxLength={80}
          placeholder="drain pump, door seal"
          value={enquiry.filter}
          onChange={event => onStep({ do: 'filter', words: event.target.value })}
          onKeyDown={goToFirstLine}
        />
      </label>
      <label className="card-field">
        <span className="card-field__name">
          Part in the hand <KeyHint>F2</KeyHint>
        </span>
        <input
          ref={partField}
          className="text-field number"
          aria-keyshortcuts="F2"
          autoComplete="off"
          spellCheck={false}
          maxLength={60}
          placeholder="its number"
          value={enquiry.part}
          onChange={event => onStep({ do: 'type-part', part: event.target.value })}
          onKeyDown={selectOnEnter}
        />
      </label>
    </div>
  )
}

/** Down leads to the first line; Enter opens it too. */
function goToFirstLine(event: KeyboardEvent<HTMLInputElement>): void {
  if (event.key !== 'ArrowDown' && event.key !== 'Enter') return
  const [first] = familyLines()
  if (first === undefined) return
  event.preventDefault()
  first.focus()
  if (event.key === 'Enter' && first.getAttribute('aria-expanded') === 'false') first.click()
}

/** A scanner ends with Enter; the next number it sends takes the place of the last. */
function selectOnEnter(event: KeyboardEvent<HTMLInputElement>): void {
  if (event.key === 'Enter') event.currentTarget.select()
}
