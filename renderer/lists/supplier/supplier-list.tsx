import { ProblemNote } from '../../components/problem-note.tsx'
import { useLasting } from '../../components/use-lasting.ts'
import { wordSize } from '../word-figures.ts'
import { FirstRows } from './first-rows.tsx'
import { FoundInFile } from './found-in-file.tsx'
import { KeepLayout } from './keep-layout.tsx'
import { MatchColumns } from './match-columns.tsx'
import type { SupplierList } from './use-supplier-list.ts'

/** A supplier's own file: how it is read, what stands in it, and which of its columns is which of ours. */
export function SupplierFile({ list, initials }: { readonly list: SupplierList; readonly initials: string }) {
  const { state, change, preview, proposal, layouts, doubt } = list
  const isWaiting = useLasting(preview.isFetching)
  const file = preview.data
  return (
    <section className="supplier" aria-label="The supplier’s file">
      {isWaiting && <p className="card__waiting">Reading the first rows…</p>}
      {preview.error !== null && (
        <ProblemNote
          problem={preview.error}
          kept="The path is kept, and nothing was changed."
          onRetry={() => void preview.refetch()}
        />
      )}
      {file !== undefined && preview.error === null && (
        <>
          <h2 className="order-card__sentence">
            {file.file}: {file.kind === 'csv' ? 'text in columns' : 'a workbook'}, {wordSize(file.bytes)}.
          </h2>
          {doubt !== undefined && <p className="asked-sentence supplier__doubt">{doubt}</p>}
          <FoundInFile preview={file} reading={state.reading} onRead={reading => change({ reading })} />
          <FirstRows preview={file} />
          <LayoutChoice list={list} fitting={file.layouts} />
          {state.layout === null && proposal.error !== null && (
            <ProblemNote
              problem={proposal.error}
              kept="What was matched is kept."
              onRetry={() => void proposal.refetch()}
            />
          )}
          {state.layout === null && proposal.data !== undefined && (
            <>
              <MatchColumns
                proposal={proposal.data}
                preview={file}
                match={state.match}
                onMatch={match => change({ match })}
                onFeed={feeds => change({ feeds, match: { ...state.match, columns: [] } })}
              />
              <KeepLayout list={list} initials={initials} />
            </>
          )}
          {layouts.length > 0 && file.layouts.length === 0 && state.layout === null && (
            <p className="quiet">None of the {layouts.length} saved layouts fits these headings.</p>
          )}
        </>
      )}
    </section>
  )
}

interface LayoutChoiceProps {
  readonly list: SupplierList
  readonly fitting: readonly string[]
}

/** The saved layouts that fit; the person says which, even where there is one. */
function LayoutChoice({ list, fitting }: LayoutChoiceProps) {
  const { state, change, layouts, startFrom } = list
  const names = [...new Set([...fitting, ...(state.layout === null ? [] : [state.layout])])]
  if (names.length === 0) return null
  const chosen = layouts.find(({ name }) => name === state.layout)
  return (
    <div className="match__target">
      <label htmlFor="layout-choice">Read it by</label>
      <select
        id="layout-choice"
        className="text-field"
        value={state.layout ?? ''}
        onChange={event => change({ layout: event.target.value || null })}
      >
        <option value="">a match made below</option>
        {names.map(name => (
          <option key={name} value={name}>
            layout “{name}”
          </option>
        ))}
      </select>
      {chosen !== undefined && (
        <button type="button" className="order-button" onClick={() => startFrom(chosen)}>
          Change this match…
        </button>
      )}
      {chosen !== undefined && (
        <p className="quiet match__says">
          For {chosen.feeds}:{' '}
          {chosen.columns
            .map(
              ({ column, heading, constant }) => `${column} from ${heading ?? `“${constant}” in every row`}`,
            )
            .join(', ')}
          .
        </p>
      )}
    </div>
  )
}
