import {
  type CounterEnquiry,
  type EnquiryStep,
  isMadeUnreadable,
  type PlateField,
} from './counter-enquiry.ts'

interface PlateFieldsProps {
  readonly enquiry: CounterEnquiry
  readonly asked: ReadonlySet<string>
  readonly onStep: (step: EnquiryStep) => void
}

interface FieldOnPlate {
  readonly field: PlateField
  readonly caption: string
  readonly name: string
  readonly unit: string
  readonly example: string
}

/** In the order in which the eye goes over a plate. */
const fields: readonly FieldOnPlate[] = [
  { field: 'serial', caption: 'Serial no.', name: 'Serial number', unit: '', example: '' },
  { field: 'made', caption: 'Made', name: 'Made, year or year and month', unit: '', example: 'year-month' },
  { field: 'volts', caption: 'Volts', name: 'Volts', unit: 'V ~', example: '' },
  { field: 'hertz', caption: 'Hertz', name: 'Hertz', unit: 'Hz', example: '' },
  { field: 'watts', caption: 'Watts', name: 'Watts', unit: 'W', example: '' },
]

/** What else the plate says. None of it is needed until it is asked for. */
export function PlateFields({ enquiry, asked, onStep }: PlateFieldsProps) {
  const isUnreadable = isMadeUnreadable(enquiry)
  return (
    <div className="plate-fields">
      {fields.map(({ field, caption, name, unit, example }) => {
        const isWrong = field === 'made' && isUnreadable
        return (
          <label
            key={field}
            className={`plate-field plate-field--${field}${asked.has(field) ? ' plate-field--asked' : ''}`}
          >
            <span className="plate__caption" aria-hidden="true">
              {caption}
            </span>
            <span className="plate-field__line">
              <input
                className="plate-field__input"
                aria-label={asked.has(field) ? `${name} (asked for)` : name}
                aria-invalid={isWrong || undefined}
                aria-describedby={isWrong ? 'made-unreadable' : undefined}
                autoComplete="off"
                spellCheck={false}
                maxLength={field === 'serial' ? 40 : 20}
                placeholder={example}
                value={enquiry.fields[field]}
                onChange={event => onStep({ do: 'read-field', field, value: event.target.value })}
              />
              {unit !== '' && (
                <span className="plate-field__unit" aria-hidden="true">
                  {unit}
                </span>
              )}
            </span>
          </label>
        )
      })}
      {isUnreadable && (
        <p id="made-unreadable" className="plate-fields__wrong" role="alert">
          This date is not used yet: write 2014, 2014-06 or 06/2014.
        </p>
      )}
    </div>
  )
}
