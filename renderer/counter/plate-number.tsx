import { Fragment, type KeyboardEvent, type PointerEvent, type RefObject } from 'react'
import type { CharacterCell, PlateCell } from './plate-cells.ts'
import { typedPlaceOf } from './typed-place.ts'
import { type TypedSelection, useTypedSelection } from './use-typed-selection.ts'

interface PlateNumberProps {
  readonly field: RefObject<HTMLInputElement | null>
  readonly text: string
  readonly cells: readonly PlateCell[]
  readonly onType: (text: string) => void
  readonly onKeyDown: (event: KeyboardEvent) => void
  /** What the list of models below it is called by assistive technology, and the option pointed at. */
  readonly listId: string | undefined
  readonly activeOptionId: string | undefined
}

/**
 * The number as stamped, one cell a character. The field itself is real and lies unseen over the cells: typing, pasting,
 * selecting and screen readers work on it, and its caret is drawn in the cells.
 */
export function PlateNumber(props: PlateNumberProps) {
  const { field, text, cells, onType, onKeyDown, listId, activeOptionId } = props
  const selection = useTypedSelection(field)
  const caretAfter = selection === null ? null : caretCell(cells, selection, text)
  return (
    <div className="plate-number" data-focused={selection !== null || undefined}>
      <label className="plate__caption" htmlFor="plate-number">
        Model no.
      </label>
      <input
        ref={field}
        id="plate-number"
        className="plate-number__field"
        role="combobox"
        aria-expanded={listId !== undefined}
        aria-controls={listId ?? ''}
        aria-activedescendant={activeOptionId}
        aria-autocomplete="list"
        aria-describedby="plate-line"
        autoComplete="off"
        autoCapitalize="characters"
        spellCheck={false}
        maxLength={400}
        value={text}
        onChange={event => onType(event.target.value)}
        onKeyDown={onKeyDown}
      />
      <div
        className={`plate-number__cells${text.length > 44 ? ' plate-number__cells--dense' : ''}`}
        aria-hidden="true"
        onPointerDown={event => placeCaret(event, field.current)}
      >
        {cells.map((cell, at) => (
          <Fragment key={at}>
            {beginsLine(cells, at) && <span className="plate-number__break" />}
            <Cell
              cell={cell}
              caret={caretAfter === at ? 'after' : caretAfter === -1 && at === 0 ? 'before' : undefined}
              isSelected={isInside(cell.typedAt, selection)}
            />
          </Fragment>
        ))}
      </div>
    </div>
  )
}

/** The number begins a line of its own below the label words or the sales name before it, so that it is not torn. */
function beginsLine(cells: readonly PlateCell[], at: number): boolean {
  if (cells[at]?.kind !== 'character') return false
  const isAfterName = cells[at - 1]?.kind === 'name'
  const isFirstAfterWords = at > 0 && cells.slice(0, at).every(({ kind }) => kind !== 'character')
  return isAfterName || isFirstAfterWords
}

function Cell({
  cell,
  caret,
  isSelected,
}: {
  readonly cell: PlateCell
  readonly caret: 'before' | 'after' | undefined
  readonly isSelected: boolean
}) {
  const marks = {
    'data-caret': caret,
    'data-selected': isSelected || undefined,
    'data-typed-at': cell.typedAt,
  }
  if (cell.kind !== 'character')
    return (
      <span
        className={`cell-print cell-print--${cell.kind}`}
        data-printed={cell.typedAt === null || undefined}
        {...marks}
      >
        {cell.text.replace(/\s/g, '\u00a0')}
      </span>
    )
  return (
    <span className={`cell cell--${cell.mark}${cell.isAsked ? ' cell--asked' : ''}`} {...marks}>
      <span className="cell__character">{characterOf(cell)}</span>
      {hasSecondReading(cell) && <span className="cell__catalogue">{cell.catalogue}</span>}
      {cell.mark === 'surplus' && <span className="cell__catalogue">–</span>}
    </span>
  )
}

function characterOf({ mark, typed, catalogue, isAsked }: CharacterCell): string {
  if (typed !== '') return typed
  if (isAsked) return '?'
  return mark === 'known' ? catalogue : ''
}

function hasSecondReading({ mark, catalogue }: CharacterCell): boolean {
  return catalogue !== '' && (mark === 'differs' || mark === 'unreadable')
}

/** The cell after which the caret stands; -1 before the first. */
function caretCell(cells: readonly PlateCell[], { start, end }: TypedSelection, text: string): number | null {
  if (start !== end) return null
  if (text === '' || start === 0) return -1
  return cells.findLastIndex(({ typedAt }) => typedAt !== null && typedAt < start)
}

function isInside(typedAt: number | null, selection: TypedSelection | null): boolean {
  return selection !== null && typedAt !== null && typedAt >= selection.start && typedAt < selection.end
}

function placeCaret(event: PointerEvent, field: HTMLInputElement | null): void {
  if (field === null) return
  event.preventDefault()
  field.focus()
  const at = typedPlaceOf(event.target, field.value.length)
  if (event.detail > 1) field.select()
  else field.setSelectionRange(at, at)
}
