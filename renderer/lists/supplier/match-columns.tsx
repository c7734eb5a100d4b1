import type { FilePreview, LayoutProposal, Shape } from '../../../shared-schemas/supplier-layouts.ts'
import { KeyHint } from '../../components/key-hint.tsx'
import {
  type DraftMatch,
  emptyColumn,
  matchOf,
  type ProposedColumn,
  readWords,
  setMatch,
  takeAll,
  takeProposal,
  takeShape,
  writeWords,
} from './draft-match.ts'

interface MatchColumnsProps {
  readonly proposal: LayoutProposal
  readonly preview: FilePreview
  readonly match: DraftMatch
  readonly onMatch: (match: DraftMatch) => void
  readonly onFeed: (feeds: string) => void
}

/** Which of their columns is which of ours. What is proposed counts only once it was taken. */
export function MatchColumns({ proposal, preview, match, onMatch, onFeed }: MatchColumnsProps) {
  return (
    <section className="match" aria-label="Columns matched">
      <div className="match__target">
        <label htmlFor="match-feeds">Its rows are for</label>
        <select
          id="match-feeds"
          className="text-field"
          value={proposal.feeds}
          onChange={event => onFeed(event.target.value)}
        >
          {proposal.targets.map(({ file, matched }) => (
            <option key={file} value={file}>
              {file} ({matched} {matched === 1 ? 'heading' : 'headings'} known)
            </option>
          ))}
        </select>
        <button
          type="button"
          className="order-button"
          id="take-proposals"
          aria-keyshortcuts="F6"
          onClick={() => onMatch(takeAll(match, proposal))}
        >
          Take all proposals <KeyHint>F6</KeyHint>
        </button>
      </div>
      <ShapeLine shape={match.shape} proposed={proposal.shape} onShape={s => onMatch(takeShape(match, s))} />
      <ul className="match__columns">
        {proposal.columns.map(column => (
          <MatchColumn
            key={column.column}
            proposed={column}
            preview={preview}
            match={match}
            onMatch={onMatch}
          />
        ))}
      </ul>
    </section>
  )
}

interface ShapeLineProps {
  readonly shape: Shape
  readonly proposed: Shape
  readonly onShape: (shape: Shape) => void
}

function ShapeLine({ shape, proposed, onShape }: ShapeLineProps) {
  if (shape.kind !== 'long')
    return (
      <p>
        {wordShape(shape)}.{' '}
        <button type="button" className="plain-button" onClick={() => onShape({ kind: 'long' })}>
          One a row instead
        </button>
      </p>
    )
  if (proposed.kind === 'long') return null
  return (
    <p>
      Proposed: {wordShape(proposed)}.{' '}
      <button type="button" className="plain-button" onClick={() => onShape(proposed)}>
        Take
      </button>
    </p>
  )
}

function wordShape(shape: Exclude<Shape, { kind: 'long' }>): string {
  if (shape.kind === 'wide-columns')
    return `each row names several, for ${shape.column}: ${shape.headings.join(', ')}`
  const signs = shape.separators.map(sign => (sign === '\n' ? 'a new line' : `“${sign}”`)).join(' or ')
  return `a cell of “${shape.heading}” names several, for ${shape.column}, parted by ${signs}`
}

interface MatchColumnProps {
  readonly proposed: ProposedColumn
  readonly preview: FilePreview
  readonly match: DraftMatch
  readonly onMatch: (match: DraftMatch) => void
}

const sameInEveryRow = '\u{0}same'

function MatchColumn({ proposed, preview, match, onMatch }: MatchColumnProps) {
  const { column, needed, holds, takes, heading: wanted, why } = proposed
  const isShaped = match.shape.kind !== 'long' && match.shape.column === column
  const matched = matchOf(match, column)
  const id = `match-${column}`
  const change = (part: Partial<typeof blank>) => {
    const next = { ...(matched ?? blank), ...part }
    onMatch(setMatch(match, column, next.heading === null && next.constant === null ? null : next))
  }
  const blank = emptyColumn(column)
  const samples = matched?.heading ? samplesOf(preview, matched.heading) : []
  return (
    <li className="match__column">
      <label className="match__ours" htmlFor={id}>
        <span className="number">{column}</span> {needed && <span className="match__needed">needed</span>}
      </label>
      <div className="match__theirs">
        <select
          id={id}
          className="text-field"
          disabled={isShaped}
          value={matched === undefined ? '' : (matched.heading ?? sameInEveryRow)}
          onChange={({ target: { value } }) =>
            change(
              value === sameInEveryRow
                ? { heading: null, constant: '' }
                : { heading: value || null, constant: null },
            )
          }
        >
          <option value="">{isShaped ? 'as said above' : 'left empty'}</option>
          {[...new Set(preview.headings)].map(heading => (
            <option key={heading} value={heading}>
              {heading}
            </option>
          ))}
          <option value={sameInEveryRow}>the same in every row…</option>
        </select>
        {matched !== undefined && matched.constant !== null && (
          <input
            className="text-field number"
            aria-label={`${column} in every row`}
            value={matched.constant}
            onChange={event => change({ constant: event.target.value })}
          />
        )}
        {matched?.heading != null && holds === 'number' && (
          <label className="match__detail">
            Decimals after a{' '}
            <select
              value={matched.decimalSign ?? ''}
              onChange={event => change({ decimalSign: readSign(event.target.value) })}
            >
              <option value="">not said</option>
              <option value=".">point</option>
              <option value=",">comma</option>
            </select>
          </label>
        )}
        {matched?.heading != null && holds === 'date' && (
          <label className="match__detail">
            Dates are{' '}
            <select
              value={matched.dateOrder ?? ''}
              onChange={event => change({ dateOrder: readOrder(event.target.value) })}
            >
              <option value="">as ours</option>
              <option value="ymd">year month day</option>
              <option value="dmy">day month year</option>
              <option value="mdy">month day year</option>
            </select>
          </label>
        )}
        {matched?.heading != null && takes.length > 0 && (
          <label className="match__detail">
            Their words, as “theirs = ours” ({takes.join(', ')})
            <input
              className="text-field"
              defaultValue={writeWords(matched.words)}
              onChange={event => change({ words: readWords(event.target.value) })}
            />
          </label>
        )}
      </div>
      <div className="match__beside">
        {samples.length > 0 && <span className="number">{samples.join(' · ')}</span>}
        {wanted !== null && !isShaped && matched?.heading !== wanted && (
          <span>
            Proposed: <span className="number">{wanted}</span> <span className="quiet">({why})</span>{' '}
            <button
              type="button"
              className="plain-button"
              aria-label={`Take ${wanted} for ${column}`}
              onClick={() => onMatch(takeProposal(match, proposed))}
            >
              Take
            </button>
          </span>
        )}
      </div>
    </li>
  )
}

/** Three cells that hold something, so that the match can be judged. */
function samplesOf({ headings, rows }: FilePreview, heading: string): string[] {
  const at = headings.indexOf(heading)
  const cells = rows.map(({ cells }) => cells[at]?.trim() ?? '').filter(cell => cell !== '')
  return [...new Set(cells)].slice(0, 3)
}

function readSign(value: string): '.' | ',' | null {
  return value === '.' || value === ',' ? value : null
}

function readOrder(value: string): 'ymd' | 'dmy' | 'mdy' | null {
  return value === 'ymd' || value === 'dmy' || value === 'mdy' ? value : null
}
