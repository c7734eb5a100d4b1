import type { ModelCandidate } from '../../shared-schemas/model-lookup.ts'
import type { ApplianceQuestion, PlateReadings } from '../../shared-schemas/plate-reading.ts'
import { readMadeDate } from './read-made-date.ts'

/** The other readings that a rating plate has a place for. */
export const plateFields = ['serial', 'made', 'volts', 'hertz', 'watts'] as const
export type PlateField = (typeof plateFields)[number]

/** One enquiry at the counter, as a person has filled it in. */
export interface CounterEnquiry {
  readonly text: string
  /** Empty: any maker. */
  readonly brand: string
  readonly fields: Readonly<Record<PlateField, string>>
  /** Measured on the old part, by attribute. */
  readonly measured: Readonly<Record<string, string>>
  readonly pointedAt: ModelCandidate | null
  /** A doubtful model that a first Enter pointed out; a second takes it. */
  readonly isConfirming: boolean
  readonly taken: ModelCandidate | null
  readonly filter: string
  readonly openFamily: string | null
  readonly part: string
}

export const emptyEnquiry: CounterEnquiry = {
  text: '',
  brand: '',
  fields: { serial: '', made: '', volts: '', hertz: '', watts: '' },
  measured: {},
  pointedAt: null,
  isConfirming: false,
  taken: null,
  filter: '',
  openFamily: null,
  part: '',
}

export type EnquiryStep =
  | { readonly do: 'type-plate'; readonly text: string }
  | { readonly do: 'choose-brand'; readonly brand: string }
  | { readonly do: 'read-field'; readonly field: PlateField; readonly value: string }
  | { readonly do: 'measure'; readonly attribute: string; readonly value: string }
  | { readonly do: 'point-at'; readonly model: ModelCandidate; readonly isConfirming: boolean }
  | { readonly do: 'take'; readonly model: ModelCandidate }
  | { readonly do: 'filter'; readonly words: string }
  | { readonly do: 'open-family'; readonly family: string | null }
  | { readonly do: 'type-part'; readonly part: string }
  | { readonly do: 'start-anew' }

/** The enquiry after one step. Another number is another appliance: what was chosen for the last one is let go. */
export function takeStep(enquiry: CounterEnquiry, step: EnquiryStep): CounterEnquiry {
  switch (step.do) {
    case 'type-plate':
      return { ...enquiry, ...noModelChosen, text: step.text }
    case 'choose-brand':
      return { ...enquiry, ...noModelChosen, brand: step.brand }
    case 'read-field':
      return { ...enquiry, fields: { ...enquiry.fields, [step.field]: step.value } }
    case 'measure':
      return { ...enquiry, measured: { ...enquiry.measured, [step.attribute]: step.value } }
    case 'point-at':
      return { ...enquiry, pointedAt: step.model, isConfirming: step.isConfirming, taken: null }
    case 'take':
      return { ...enquiry, pointedAt: step.model, isConfirming: false, taken: step.model }
    case 'filter':
      return { ...enquiry, filter: step.words }
    case 'open-family':
      return { ...enquiry, openFamily: step.family }
    case 'type-part':
      return { ...enquiry, part: step.part }
    case 'start-anew':
      return emptyEnquiry
  }
}

const noModelChosen = { pointedAt: null, isConfirming: false, taken: null, openFamily: null, measured: {} }

/** What is asked of the engine: the model that was taken, else the text as it stands, with every reading that can be read. */
export function questionOf(enquiry: CounterEnquiry): ApplianceQuestion {
  const { text, brand, taken } = enquiry
  const model = taken === null ? { model: text.trim() } : { model: taken.modelNumber, brand: taken.brand }
  return { ...(brand === '' ? {} : { brand }), ...model, ...readingsOf(enquiry) }
}

export function readingsOf({ fields, measured }: CounterEnquiry): PlateReadings {
  const made = readMadeDate(fields.made)
  const asTyped = Object.fromEntries(
    plateFields.flatMap(field => {
      const value = fields[field].trim()
      return field === 'made' || value === '' ? [] : [[field, value]]
    }),
  )
  const taken = Object.entries(measured).filter(([, value]) => value.trim() !== '')
  return {
    ...asTyped,
    ...(made === undefined ? {} : { made }),
    ...(taken.length === 0 ? {} : { measured: Object.fromEntries(taken) }),
  }
}

/** A date was typed that is none, so it is not used. */
export function isMadeUnreadable({ fields }: Pick<CounterEnquiry, 'fields'>): boolean {
  return fields.made.trim() !== '' && readMadeDate(fields.made) === undefined
}
