import { useMutation } from '@tanstack/react-query'
import { type FormEvent, useId, useRef, useState } from 'react'
import type { CountLine } from '../../shared-schemas/van-counts.ts'
import { KeyHint } from '../components/key-hint.tsx'
import type { Count } from './use-count.ts'

interface CountSheetProps {
  readonly count: Count
  readonly onUndo: () => void
  readonly onLeave: () => void
}

/** The blind sheet: what should lie where, and what was counted of it; never how many the book has. */
export function CountSheet({ count, onUndo, onLeave }: CountSheetProps) {
  const { sheet, setStage, recounting } = count
  const lines = sheet.data?.lines ?? []
  const left = lines.filter(({ counted }) => counted === null).length
  const place = sheet.data?.location ?? ''
  return (
    <section className="count-sheet" aria-labelledby="count-sheet">
      <h2 id="count-sheet" className="stock-sentence">
        Count of <span className="number">{place}</span>: {lines.length - left} of {lines.length} lines
        counted.
      </h2>
      <p className="stock-print-only">
        Begun {sheet.data?.begunAt.slice(0, 10)}. Counted by ______________ on ______________
      </p>
      {recounting !== null && (
        <p className="asked-sentence">
          Count <span className="number">{recounting}</span> again: scan every piece, or type how many there
          are. The first scan begins anew.
        </p>
      )}
      <TypedReading key={recounting} count={count} />
      <p className="stock-acts">
        <button type="button" className="order-button" aria-keyshortcuts="F2" onClick={onUndo}>
          Take the last one back <KeyHint>F2</KeyHint>
        </button>
        <button
          type="button"
          className="order-button"
          aria-keyshortcuts="F9"
          onClick={() => setStage('compare')}
        >
          Compare with the book <KeyHint>F9</KeyHint>
        </button>
        <button type="button" className="order-button" aria-keyshortcuts="F8" onClick={() => window.print()}>
          Print the sheet <KeyHint>F8</KeyHint>
        </button>
        <button type="button" className="order-button" onClick={onLeave}>
          Go on later
        </button>
      </p>
      {sheet.error !== null && (
        <p className="problem-note" role="alert">
          {sheet.error.message}
        </p>
      )}
      <table className="stock-table count-table" aria-labelledby="count-sheet">
        <thead>
          <tr>
            <th scope="col">Part</th>
            <th scope="col">What it is</th>
            <th scope="col" className="stock-figure">
              Counted
            </th>
          </tr>
        </thead>
        {groupByBin(lines).map(([bin, inBin]) => (
          <tbody key={bin}>
            <tr className="count-table__bin">
              <th scope="rowgroup" colSpan={3}>
                {bin === '' ? (
                  'No bin'
                ) : (
                  <>
                    Bin <span className="number">{bin}</span>
                  </>
                )}
              </th>
            </tr>
            {inBin.map(({ partNumber, description, family, counted }) => (
              <tr key={partNumber} data-counted={counted !== null || undefined}>
                <th scope="row" className="number stock-number">
                  {partNumber}
                </th>
                <td>{description === '' ? family : description}</td>
                <td className="stock-figure count-table__counted">
                  {counted ?? <span className="count-table__blank">not yet</span>}
                </td>
              </tr>
            ))}
          </tbody>
        ))}
      </table>
    </section>
  )
}

/** Bin by bin as one walks along them: 2 before 10, and what has no bin last. */
function groupByBin(lines: readonly CountLine[]): [string, CountLine[]][] {
  const groups = [...Map.groupBy(lines, ({ bin }) => bin ?? '')]
  return groups.sort(
    ([one], [other]) =>
      Number(one === '') - Number(other === '') || one.localeCompare(other, 'en', { numeric: true }),
  )
}

/** A part counted by hand: its number, and how many there are in all. */
function TypedReading({ count }: { readonly count: Count }) {
  const id = useId()
  const [part, setPart] = useState(count.recounting ?? '')
  const [pieces, setPieces] = useState('')
  const [missing, setMissing] = useState('')
  const partField = useRef<HTMLInputElement>(null)
  const piecesField = useRef<HTMLInputElement>(null)
  const read = useMutation({
    mutationFn: () => count.read(part, Number(pieces), 'whole'),
    networkMode: 'always',
    onSuccess: () => {
      setPart('')
      setPieces('')
      partField.current?.focus()
    },
  })
  const onSubmit = (event: FormEvent) => {
    event.preventDefault()
    const isWhole = /^\d{1,6}$/.test(pieces.trim())
    setMissing(
      part.trim() === ''
        ? 'Which part? Type its number.'
        : isWhole
          ? ''
          : 'How many are there? Type a whole number; 0 for none.',
    )
    if (part.trim() === '') partField.current?.focus()
    else if (!isWhole) piecesField.current?.focus()
    else if (!read.isPending) read.mutate()
  }
  return (
    <form className="stock-form" aria-label="Count by hand" onSubmit={onSubmit}>
      <div className="stock-form__field">
        <label htmlFor={`${id}-part`}>Part number, or scan</label>
        <input
          ref={partField}
          id={`${id}-part`}
          className="text-field number"
          data-first-field
          autoComplete="off"
          spellCheck={false}
          maxLength={60}
          value={part}
          onChange={event => setPart(event.target.value)}
        />
      </div>
      <div className="stock-form__field stock-form__field--short">
        <label htmlFor={`${id}-pieces`}>Pieces in all</label>
        <input
          ref={piecesField}
          id={`${id}-pieces`}
          className="text-field"
          inputMode="numeric"
          autoComplete="off"
          value={pieces}
          onChange={event => setPieces(event.target.value)}
        />
      </div>
      <button type="submit" className="order-button order-button--main">
        Counted <KeyHint>Enter</KeyHint>
      </button>
      <p className="stock-form__said" role="status">
        {missing === '' && read.error === null ? (read.data ?? '') : ''}
      </p>
      {(missing !== '' || read.error !== null) && (
        <p className="problem-note" role="alert">
          {missing === '' ? read.error?.message : missing}
        </p>
      )}
    </form>
  )
}
