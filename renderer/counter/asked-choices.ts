import type { AskedReading, Verdict } from '../../shared-schemas/fit-check.ts'
import type { EnquiryStep } from './counter-enquiry.ts'

export interface Choice {
  readonly value: string
  /** Puts the value where it is asked for; undefined where it is a range or a name that has yet to be read. */
  readonly choose: (() => void) | undefined
}

export interface ChoiceGroup {
  readonly verdict: Verdict
  readonly choices: readonly Choice[]
}

interface Answering {
  readonly onFill: (value: string) => (() => void) | undefined
  readonly onStep: (step: EnquiryStep) => void
}

/** The values of an asked reading under what they would mean; none where they are too many to look through. */
export function choicesOf(
  { reading, means = [] }: AskedReading,
  answering: Answering,
): readonly ChoiceGroup[] {
  if (means.length > mostChoices) return []
  return [...Map.groupBy(means, ({ verdict }) => verdict)].map(([verdict, ofVerdict]) => ({
    verdict,
    choices: ofVerdict.map(({ value }) => ({ value, choose: chooserOf(reading, value, answering) })),
  }))
}

const mostChoices = 16

function chooserOf(reading: string, value: string, { onFill, onStep }: Answering) {
  if (reading === 'model-number') return onFill(value)
  if (reading === 'brand') return () => onStep({ do: 'choose-brand', brand: value })
  return undefined
}
