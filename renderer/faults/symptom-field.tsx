import { type KeyboardEvent, type RefObject, useId, useMemo, useState } from 'react'
import type { FaultSymptom } from '../../shared-schemas/fault-guide.ts'
import { KeyHint } from '../components/key-hint.tsx'
import { findSymptoms } from './find-symptoms.ts'
import type { Faults } from './use-faults.ts'

interface SymptomFieldProps {
  readonly faults: Faults
  readonly field: RefObject<HTMLInputElement | null>
}

/** What the customer says, in any words; below it what the guide calls it. */
export function SymptomField({
  faults: { enquiry, applianceType, step, symptoms },
  field,
}: SymptomFieldProps) {
  const listId = useId()
  const [at, setAt] = useState(0)
  const { words, symptom } = enquiry
  const listed = useMemo(
    () => findSymptoms(symptoms, { words, applianceType }).slice(0, mostListed),
    [symptoms, words, applianceType],
  )
  const isOpen = symptom === null && listed.length > 0
  const pointed = Math.min(at, listed.length - 1)
  const choose = (chosen: FaultSymptom) => {
    setAt(0)
    step({ do: 'choose-symptom', symptom: chosen })
  }
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.nativeEvent.isComposing || !isOpen) return
    const chosen = listed[pointed]
    if (event.key === 'ArrowDown') setAt(Math.min(pointed + 1, listed.length - 1))
    else if (event.key === 'ArrowUp') setAt(Math.max(pointed - 1, 0))
    else if (event.key === 'Enter' && chosen !== undefined) choose(chosen)
    else return
    event.preventDefault()
  }
  return (
    <div className="symptom">
      <label className="card-field">
        <span className="card-field__name">
          What does it do? <KeyHint>Esc</KeyHint>
        </span>
        <input
          ref={field}
          className="text-field"
          role="combobox"
          aria-expanded={isOpen}
          aria-controls={isOpen ? listId : undefined}
          aria-activedescendant={isOpen ? `${listId}-${pointed}` : undefined}
          aria-autocomplete="list"
          autoComplete="off"
          maxLength={120}
          placeholder="keeps filling and pumping out"
          value={words}
          onChange={event => {
            setAt(0)
            step({ do: 'type-words', words: event.target.value })
          }}
          onKeyDown={onKeyDown}
        />
      </label>
      {isOpen && (
        <div className="model-list symptom__list" role="listbox" id={listId} aria-label="Symptoms">
          {listed.map((found, place) => (
            // biome-ignore lint/a11y/useKeyWithClickEvents: the keys act in the field that controls this list
            <div
              key={`${found.applianceType} ${found.symptom}`}
              id={`${listId}-${place}`}
              role="option"
              tabIndex={-1}
              aria-selected={place === pointed}
              className="model-row symptom__row"
              ref={place === pointed ? scrollIntoView : undefined}
              onClick={() => choose(found)}
            >
              <strong>{found.symptom}</strong> <span className="model-row__facts">{found.applianceType}</span>
              {found.alsoSaid.length > 0 && (
                <span className="symptom__also model-row__facts">also said: {found.alsoSaid.join('; ')}</span>
              )}
            </div>
          ))}
        </div>
      )}
      {symptom === null && listed.length === 0 && symptoms.length > 0 && (
        <p>The guide has nothing under these words. Try others, or choose another kind of appliance.</p>
      )}
    </div>
  )
}

const mostListed = 24

function scrollIntoView(row: HTMLElement | null): void {
  row?.scrollIntoView({ block: 'nearest' })
}
