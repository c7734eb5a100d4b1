import { type ReactNode, type RefObject, useId } from 'react'
import type { ListedModel, ModelPage } from '../../shared-schemas/model-list.ts'
import { KeyHint } from './key-hint.tsx'
import { LongList } from './long-list.tsx'
import { ProblemNote } from './problem-note.tsx'
import { useLasting } from './use-lasting.ts'
import type { ModelList } from './use-model-list.ts'
import { wordModels } from './word-models.ts'

interface ModelsByBrandProps {
  readonly list: ModelList
  /** The whole list in words, with its count: `00480121 goes into 6,100 models`. */
  readonly sentence: (page: ModelPage) => ReactNode
  readonly filterField: RefObject<HTMLInputElement | null>
  /** Whether typing goes on in its field as soon as it shows. */
  readonly isFieldFirst?: boolean
}

/** A list of models as long as it may be, by brand, with a field that narrows it and a way to take it along. */
export function ModelsByBrand({ list, sentence, filterField, isFieldFirst = false }: ModelsByBrandProps) {
  const { words, setWords, pages, copy, copied } = list
  const { head, rowAt, onSight } = pages
  const id = useId()
  const isWaiting = useLasting(pages.isWaiting)
  return (
    <div className="model-sheet">
      {pages.problem !== null && (
        <ProblemNote problem={pages.problem} kept="Nothing was changed by looking." onRetry={pages.retry} />
      )}
      <p className="model-sheet__narrow">
        <label htmlFor={id}>
          Narrow by number, brand or type <KeyHint>F2</KeyHint>
        </label>
        <input
          ref={filterField}
          id={id}
          className="text-field number"
          aria-keyshortcuts="F2"
          // biome-ignore lint/a11y/noAutofocus: the list was asked for this moment, and this is its one field
          autoFocus={isFieldFirst}
          autoComplete="off"
          spellCheck={false}
          maxLength={120}
          value={words}
          onChange={event => setWords(event.target.value)}
        />
      </p>
      {head !== undefined && (
        <>
          <p className="model-sheet__count" role="status">
            {head.words === '' ? sentence(head) : wordModels(head, head.words)}
          </p>
          {head.matching > 0 && (
            <LongList
              key={words}
              label="Models"
              count={Math.min(head.matching, mostScrolled)}
              rowPixels={36}
              onSight={onSight}
              row={at => <ModelRow model={rowAt(at)} heads={brandThatBegins(head.brands, at)} />}
            />
          )}
          {head.matching > mostScrolled && (
            <p>
              The first {figure.format(mostScrolled)} can be scrolled to. Narrow the list to reach the others.
            </p>
          )}
          <p className="model-sheet__copy">
            <button type="button" className="plain-button" aria-keyshortcuts="F8" onClick={() => void copy()}>
              Copy as CSV <KeyHint>F8</KeyHint>
            </button>
            <span role="status">{copied}</span>
          </p>
        </>
      )}
      {isWaiting && <p className="card__waiting">Looking them up…</p>}
    </div>
  )
}

interface ModelRowProps {
  /** Undefined while its page is on the way. */
  readonly model: ListedModel | undefined
  readonly heads: ModelPage['brands'][number] | undefined
}

function ModelRow({ model, heads }: ModelRowProps) {
  return (
    <>
      {heads !== undefined && (
        <p className="model-sheet__brand">
          {heads.brand} <span className="quiet">{figure.format(heads.models)}</span>
        </p>
      )}
      <p className="model-sheet__model">
        <span className="number">{model?.modelNumber ?? '…'}</span>
        <span className="quiet">{model?.applianceType}</span>
        <span>{model?.conditions.join(', ')}</span>
      </p>
    </>
  )
}

/** The brand whose models begin at this row. */
function brandThatBegins(brands: ModelPage['brands'], at: number): ModelPage['brands'][number] | undefined {
  let first = 0
  for (const brand of brands) {
    if (first === at) return brand
    first += brand.models
  }
  return undefined
}

/** No browser draws a list that is much longer than so many rows are high. */
const mostScrolled = 400_000
const figure = new Intl.NumberFormat('en')
