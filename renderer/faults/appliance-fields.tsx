import { useId } from 'react'
import type { Faults } from './use-faults.ts'

/** Which appliance: its number as far as it is known, and what kind it is. */
export function ApplianceFields({ faults }: { readonly faults: Faults }) {
  const id = useId()
  const { enquiry, applianceType, step, found, types } = faults
  return (
    <div className="fault-appliance">
      <label className="card-field">
        <span className="card-field__name">Model no.</span>
        <input
          className="text-field number"
          autoComplete="off"
          spellCheck={false}
          maxLength={60}
          placeholder="if it is known"
          aria-describedby={`${id}-model`}
          value={enquiry.appliance.model}
          onChange={event => step({ do: 'type-model', model: event.target.value })}
        />
      </label>
      <label className="card-field">
        <span className="card-field__name">Appliance</span>
        <select
          className="text-field"
          value={applianceType}
          onChange={event => step({ do: 'choose-type', applianceType: event.target.value })}
        >
          <option value="">any</option>
          {types.map(type => (
            <option key={type} value={type}>
              {type}
            </option>
          ))}
        </select>
      </label>
      <p id={`${id}-model`} className="fault-appliance__model quiet">
        {wordModel(enquiry.appliance.model, found.data)}
      </p>
    </div>
  )
}

function wordModel(typed: string, found: Faults['found']['data']): string {
  if (typed.trim() === '')
    return 'Without it the guide goes by the kind of appliance, and fit cannot be told.'
  if (found === undefined) return ''
  const [first] = found.candidates
  if (first === undefined || found.openModels === 0)
    return 'No model has that number. Look it up on the Counter.'
  return found.openModels === 1
    ? `${first.brand} ${first.modelNumber}, ${first.applianceType}.`
    : `${found.openModels} models agree with it; what is said of fit holds for all of them.`
}
