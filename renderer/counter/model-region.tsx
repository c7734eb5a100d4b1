import type { FoundModels, ModelCandidate } from '../../shared-schemas/model-lookup.ts'
import { KeyHint } from '../components/key-hint.tsx'
import type { CounterEnquiry, EnquiryStep } from './counter-enquiry.ts'
import { factsOf, ModelList, ModelNumber } from './model-list.tsx'
import { wordOutcome } from './outcome-words.ts'

export const modelListId = 'models'

interface ModelRegionProps {
  readonly found: FoundModels
  readonly enquiry: CounterEnquiry
  readonly onStep: (step: EnquiryStep) => void
}

/** Which appliance it is: one model said large, or the list to choose from. */
export function ModelRegion({ found, enquiry, onStep }: ModelRegionProps) {
  const decided = decidedModel(found, enquiry)
  if (decided !== undefined)
    return (
      <section className="models" aria-label="Appliance" data-answers={found.typed}>
        <OneModel model={decided} isTaken={enquiry.taken !== null} typed={enquiry.text.trim()} />
      </section>
    )
  return (
    <section className="models" aria-label="Appliance" data-answers={found.typed}>
      <p className="models__outcome">
        <strong>{wordOutcome(found, null)}</strong> {hintOf(found)}
        {found.candidates.length > 0 && (
          <span className="models__keys">
            <KeyHint>↑</KeyHint>
            <KeyHint>↓</KeyHint> choose <KeyHint>Enter</KeyHint> twice takes it
          </span>
        )}
      </p>
      {found.candidates.length > 0 && (
        <ModelList
          id={modelListId}
          candidates={found.candidates}
          openModels={found.openModels}
          pointedAt={enquiry.pointedAt}
          isConfirming={enquiry.isConfirming}
          onPoint={model => onStep({ do: 'point-at', model, isConfirming: true })}
          onTake={model => onStep({ do: 'take', model })}
        />
      )}
    </section>
  )
}

/** The one model that the text names, or that a person took. */
export function decidedModel(
  { outcome, candidates }: Pick<FoundModels, 'outcome' | 'candidates'>,
  { taken }: Pick<CounterEnquiry, 'taken'>,
): ModelCandidate | undefined {
  return taken ?? (outcome === 'exact' ? candidates[0] : undefined)
}

function OneModel({
  model,
  isTaken,
  typed,
}: {
  readonly model: ModelCandidate
  readonly isTaken: boolean
  readonly typed: string
}) {
  return (
    <div className="one-model">
      <p className="one-model__name">
        <span className="one-model__brand">{model.brand}</span> <ModelNumber model={model} />
      </p>
      <p className="one-model__facts">
        {factsOf(model)}
        {isTaken && (
          <span className="one-model__taken"> Chosen at the counter; the plate was read as “{typed}”.</span>
        )}
      </p>
    </div>
  )
}

function hintOf({ candidates, openModels, outcome }: FoundModels): string {
  if (candidates.length === 0)
    return 'Try another part of the number, or ? for a character that cannot be read.'
  if (openModels > candidates.length)
    return `The ${candidates.length} likeliest are listed; type more, or choose the maker.`
  return outcome === 'near' ? 'Compare it with the plate before anything is ordered.' : ''
}
