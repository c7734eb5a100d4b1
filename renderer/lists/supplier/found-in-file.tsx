import type { ReactNode } from 'react'
import {
  type Certainty,
  type Encoding,
  encodings,
  type FilePreview,
  type Reading,
  type Separator,
} from '../../../shared-schemas/supplier-layouts.ts'

interface FoundInFileProps {
  readonly preview: FilePreview
  readonly reading: Reading
  readonly onRead: (reading: Reading) => void
}

/** How the file is read and how sure that is. The person chooses wherever it is not certain, and may anywhere. */
export function FoundInFile({ preview, reading, onRead }: FoundInFileProps) {
  const { encoding, separator, sheets } = preview
  return (
    <div className="found">
      {encoding !== null && (
        <Found
          id="found-encoding"
          label="Letters are read as"
          chosen={reading.encoding ?? ''}
          found={encoding.encoding}
          {...encoding}
          values={orderOptions(
            encoding.options.map(option => option.encoding),
            encodings,
          )}
          onChoose={value => onRead({ ...reading, encoding: (value || null) as Encoding | null })}
        >
          {encoding.certainty !== 'certain' && (
            <ul className="found__samples">
              {encoding.options.slice(0, mostOptions).map(option => (
                <li key={option.encoding}>
                  {option.encoding}: <span className="number">{option.samples.slice(0, 3).join('  ')}</span>
                </li>
              ))}
            </ul>
          )}
        </Found>
      )}
      {separator !== null && (
        <Found
          id="found-separator"
          label="Cells are parted by"
          chosen={reading.separator ?? ''}
          found={separator.separator}
          {...separator}
          values={separator.options.map(option => option.separator)}
          onChoose={value => onRead({ ...reading, separator: (value || null) as Separator | null })}
        />
      )}
      {sheets.length > 1 && (
        <div className="found__field">
          <label htmlFor="found-sheet">Sheet</label>
          <select
            id="found-sheet"
            className="text-field"
            value={preview.reading.sheet ?? ''}
            onChange={event => onRead({ ...reading, sheet: event.target.value })}
          >
            {sheets.map(({ name, hidden }) => (
              <option key={name} value={name}>
                {name}
                {hidden && ' (hidden)'}
              </option>
            ))}
          </select>
        </div>
      )}
      <div className="found__field">
        <label htmlFor="found-header">Row with the headings</label>
        <input
          id="found-header"
          className="text-field number"
          type="number"
          min={1}
          max={1000}
          placeholder="none"
          value={reading.headerRow ?? ''}
          onChange={event => onRead({ ...reading, headerRow: readRow(event.target.value) })}
        />
        <p className="quiet">The first is 1. Empty where no row has any.</p>
      </div>
    </div>
  )
}

const mostOptions = 4

/** A file of many rows may begin with some lines of its own; empty is none. */
function readRow(text: string): number | null {
  const row = Number(text)
  return text.trim() === '' || !Number.isInteger(row) ? null : Math.min(Math.max(row, 1), 1000)
}

/** What the bytes allow first, then the rest, which a person may know better. */
function orderOptions<Value extends string>(first: readonly Value[], all: readonly Value[]): Value[] {
  return [...first, ...all.filter(value => !first.includes(value))]
}

interface FoundProps {
  readonly id: string
  readonly label: string
  readonly chosen: string
  readonly found: string
  readonly certainty: Certainty
  readonly why: string
  readonly values: readonly string[]
  readonly onChoose: (value: string) => void
  readonly children?: ReactNode
}

function Found({ id, label, chosen, found, certainty, why, values, onChoose, children }: FoundProps) {
  const isOpen = certainty !== 'certain' && chosen === ''
  return (
    <div className="found__field">
      <label htmlFor={id}>{label}</label>
      <select
        id={id}
        className={isOpen ? 'text-field found__choice--open' : 'text-field'}
        aria-describedby={`${id}-why`}
        value={chosen}
        onChange={event => onChoose(event.target.value)}
      >
        <option value="">
          {isOpen ? `Choose (perhaps ${wordSign(found)})` : `${wordSign(found)}, as found`}
        </option>
        {values.map(value => (
          <option key={value} value={value}>
            {wordSign(value)}
          </option>
        ))}
      </select>
      <p id={`${id}-why`} className={isOpen ? 'asked-sentence' : 'quiet'}>
        {certaintyWords[certainty]}: {why}.
      </p>
      {children}
    </div>
  )
}

const certaintyWords: Readonly<Record<Certainty, string>> = {
  certain: 'Certain',
  likely: 'Likely, not certain',
  open: 'Open',
}

function wordSign(value: string): string {
  const signs: Readonly<Record<string, string>> = {
    ',': 'comma ,',
    ';': 'semicolon ;',
    '\t': 'tab',
    '|': 'bar |',
  }
  return signs[value] ?? value
}
