import type { CheckAnswer, FaultQuestion } from '../../shared-schemas/fault-finding.ts'
import type { FaultSymptom } from '../../shared-schemas/fault-guide.ts'
import type { ApplianceQuestion } from '../../shared-schemas/plate-reading.ts'

/** One fault being looked for, as a person has filled it in. */
export interface FaultEnquiry {
  /** As typed or handed over from the Counter; its `model` may be empty. */
  readonly appliance: ApplianceQuestion
  /** Empty until it is chosen, or told by the model. */
  readonly applianceType: string
  readonly words: string
  readonly symptom: FaultSymptom | null
  readonly answers: readonly CheckAnswer[]
  /** A check that a person asked for, in place of the best; also one whose answer is changed. */
  readonly asked: string | null
  /** It has ended, and a person wants to be surer. */
  readonly isGoingOn: boolean
}

export const emptyEnquiry: FaultEnquiry = {
  appliance: { model: '' },
  applianceType: '',
  words: '',
  symptom: null,
  answers: [],
  asked: null,
  isGoingOn: false,
}

export type FaultStep =
  | { readonly do: 'take-appliance'; readonly appliance: ApplianceQuestion }
  | { readonly do: 'type-model'; readonly model: string }
  | { readonly do: 'choose-type'; readonly applianceType: string }
  | { readonly do: 'type-words'; readonly words: string }
  | { readonly do: 'choose-symptom'; readonly symptom: FaultSymptom }
  | { readonly do: 'answer'; readonly answer: CheckAnswer }
  | { readonly do: 'take-back' }
  | { readonly do: 'ask'; readonly check: string | null }
  | { readonly do: 'go-on' }

/** The enquiry after one step. Another appliance or symptom is another fault: what was answered is let go. */
export function takeStep(enquiry: FaultEnquiry, step: FaultStep): FaultEnquiry {
  switch (step.do) {
    case 'take-appliance':
      return { ...emptyEnquiry, appliance: step.appliance }
    case 'type-model':
      return { ...enquiry, appliance: { model: step.model } }
    case 'choose-type':
      return step.applianceType === enquiry.applianceType
        ? enquiry
        : { ...enquiry, ...nothingFound, applianceType: step.applianceType }
    case 'type-words':
      return { ...enquiry, ...nothingFound, words: step.words }
    case 'choose-symptom':
      return {
        ...enquiry,
        ...nothingFound,
        applianceType: step.symptom.applianceType,
        symptom: step.symptom,
        words: step.symptom.symptom,
      }
    case 'answer':
      return { ...enquiry, answers: putAnswer(enquiry.answers, step.answer), asked: null }
    case 'take-back':
      return { ...enquiry, answers: enquiry.answers.slice(0, -1), asked: null }
    case 'ask':
      return { ...enquiry, asked: step.check }
    case 'go-on':
      return { ...enquiry, isGoingOn: true, asked: null }
  }
}

const nothingFound = { symptom: null, answers: [], asked: null, isGoingOn: false }

/** A changed answer keeps its place. */
function putAnswer(answers: readonly CheckAnswer[], answer: CheckAnswer): readonly CheckAnswer[] {
  return answers.some(({ check }) => check === answer.check)
    ? answers.map(given => (given.check === answer.check ? answer : given))
    : [...answers, answer]
}

/** What the engine is asked about this fault. An empty model number asks about the kind of appliance. */
export function questionOf(
  { appliance, answers }: Pick<FaultEnquiry, 'appliance' | 'answers'>,
  { applianceType, symptom }: FaultSymptom,
): FaultQuestion {
  const known = appliance.model.trim() === '' ? {} : { appliance }
  return { applianceType, symptom, answers: [...answers], ...known }
}
