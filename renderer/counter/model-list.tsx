import type { ModelCandidate } from '../../shared-schemas/model-lookup.ts'
import { KeyHint } from '../components/key-hint.tsx'

interface ModelListProps {
  readonly id: string
  readonly candidates: readonly ModelCandidate[]
  /** So many of them agree with the text; those after are near it. */
  readonly openModels: number
  readonly pointedAt: ModelCandidate | null
  readonly isConfirming: boolean
  readonly onPoint: (model: ModelCandidate) => void
  readonly onTake: (model: ModelCandidate) => void
}

/** The models that the text may mean, best first. A press points one out; a second takes it, as with Enter. */
export function ModelList({
  id,
  candidates,
  openModels,
  pointedAt,
  isConfirming,
  onPoint,
  onTake,
}: ModelListProps) {
  return (
    <div className="model-list" role="listbox" id={id} aria-label="Models">
      {candidates.map((model, at) => {
        const isPointedAt = model.modelId === pointedAt?.modelId
        return (
          // biome-ignore lint/a11y/useKeyWithClickEvents: the keys act in the field that controls this list
          <div
            key={model.modelId}
            id={optionId(id, model)}
            role="option"
            tabIndex={-1}
            aria-selected={isPointedAt}
            className={`model-row${at === openModels && at > 0 ? ' model-row--first-near' : ''}`}
            ref={isPointedAt ? scrollIntoView : undefined}
            onClick={() => (isPointedAt && isConfirming ? onTake(model) : onPoint(model))}
          >
            {at === openModels && at > 0 && (
              <span className="model-row__near">Near it, in case it was misread:</span>
            )}
            <span className="model-row__brand">{model.brand}</span>
            <ModelNumber model={model} />
            <span className="model-row__facts">{factsOf(model)}</span>
            {isPointedAt && isConfirming && (
              <span className="model-row__confirm">
                {doubtOf(model)} <KeyHint>Enter</KeyHint> again to take it
              </span>
            )}
          </div>
        )
      })}
    </div>
  )
}

export function optionId(listId: string, { modelId }: ModelCandidate): string {
  return `${listId}-${modelId}`
}

/** The number as the maker prints it; characters that differ from what was typed are marked. */
export function ModelNumber({ model }: { readonly model: ModelCandidate }) {
  const differing = new Set(
    (model.matched === 'sales-name' ? [] : model.differences).flatMap(({ at, typed, catalogue }) =>
      typed === '' || typed === '?' ? [] : Array.from(catalogue, (_, step) => at + step),
    ),
  )
  let position = 0
  return (
    <span className="number model-number">
      {Array.from(model.modelNumber, (character, at) => {
        if (/[\p{L}\p{N}]/u.test(character)) position += 1
        const isMarked = /[\p{L}\p{N}]/u.test(character) && differing.has(position)
        return isMarked ? <mark key={at}>{character}</mark> : <span key={at}>{character}</span>
      })}
    </span>
  )
}

export function factsOf({ applianceType, madeFrom, madeTo, salesNames }: ModelCandidate): string {
  const made =
    madeFrom === null ? '' : madeTo === null ? `made ${madeFrom} on` : `made ${madeFrom} to ${madeTo}`
  return [applianceType, made, salesNames.slice(0, 2).join(', ')].filter(Boolean).join(' · ')
}

/** Why this one is not sure. */
function doubtOf({ differences, matched }: ModelCandidate): string {
  if (matched === 'sales-name') return 'Only the sales name was typed.'
  const missing = differences.filter(({ typed }) => typed === '').length
  const unreadable = differences.filter(({ typed }) => typed === '?').length
  const changed = differences.filter(({ typed }) => typed !== '' && typed !== '?')
  const parts = [
    ...changed.map(
      ({ at, typed, catalogue }) => `${typed} typed, ${catalogue || 'nothing'} in the catalogue at ${at}`,
    ),
    ...(unreadable > 0 ? [`${unreadable} unreadable`] : []),
    ...(missing > 0 ? [`${missing} ${missing === 1 ? 'character' : 'characters'} not typed`] : []),
  ]
  return parts.length === 0 ? '' : `${parts.slice(0, 3).join('; ')}.`
}

function scrollIntoView(row: HTMLElement | null): void {
  row?.scrollIntoView({ block: 'nearest' })
}
