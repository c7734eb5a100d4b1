import { keepPreviousData, useQuery } from '@tanstack/react-query'
import { useReducer } from 'react'
import type { DescribedCheck, WeighedFaults } from '../../shared-schemas/fault-finding.ts'
import type { FoundModels } from '../../shared-schemas/model-lookup.ts'
import { ask } from '../bridge/client.ts'
import { useSettled } from '../components/use-settled.ts'
import { emptyEnquiry, type FaultEnquiry, questionOf, takeStep } from './fault-enquiry.ts'

/** The fault being looked for, what the guide says of it, and which check stands now. */
export function useFaults() {
  const [enquiry, step] = useReducer(takeStep, emptyEnquiry)
  const summary = useQuery({
    queryKey: ['catalogue.read-summary'],
    queryFn: () => ask('catalogue.read-summary', {}),
    staleTime: Number.POSITIVE_INFINITY,
  })
  const symptoms = useQuery({
    queryKey: ['fault-guide.list-symptoms'],
    queryFn: () => ask('fault-guide.list-symptoms', {}),
  })
  const found = useFoundModel(enquiry)
  const asked = useWeighed(enquiry)
  const weighed = ofThisSymptom(enquiry, asked.data)
  return {
    enquiry,
    step,
    applianceType: enquiry.applianceType || typeOf(found.data),
    symptoms: symptoms.data?.symptoms ?? [],
    types: [...new Set(symptoms.data?.symptoms.map(({ applianceType }) => applianceType))],
    found,
    weighed,
    isCurrent: !asked.isPlaceholderData,
    problem: asked.error,
    onAskAgain: () => void asked.refetch(),
    shop: summary.data?.locations.find(({ kind }) => kind === 'shop')?.name ?? 'Tallyplate',
    check: checkNow(enquiry, weighed),
  }
}

export type Faults = ReturnType<typeof useFaults>

/** Which models the number leaves open, for the kind of appliance and the fit of the part. */
function useFoundModel({ appliance: { model, brand } }: FaultEnquiry) {
  const text = useSettled(model.trim(), 180)
  return useQuery({
    queryKey: ['model-lookup.find-models', text, brand ?? ''],
    queryFn: () =>
      ask('model-lookup.find-models', { text, top: 24, ...(brand === undefined ? {} : { brand }) }),
    enabled: text !== '',
  })
}

function useWeighed({ appliance, symptom, answers }: FaultEnquiry) {
  const settled = useSettled(appliance, 180)
  const question = symptom === null ? null : questionOf({ appliance: settled, answers }, symptom)
  return useQuery({
    queryKey: ['fault-guide.weigh-faults', question],
    queryFn: () => {
      if (question === null) throw new Error('nothing is weighed before a symptom is chosen')
      return ask('fault-guide.weigh-faults', question)
    },
    // What is learnt from a job that was just finished counts at once.
    staleTime: 0,
    placeholderData: keepPreviousData,
    enabled: question !== null,
  })
}

/** The answer to this very symptom; the last one of it while the next is on its way. */
function ofThisSymptom({ symptom }: FaultEnquiry, weighed: WeighedFaults | undefined) {
  const isOf =
    symptom !== null &&
    weighed?.symptom === symptom.symptom &&
    weighed.applianceType === symptom.applianceType
  return isOf ? weighed : undefined
}

/** What is asked now: what a person chose, else the best, unless it has ended. */
function checkNow(
  { asked, isGoingOn }: FaultEnquiry,
  weighed: WeighedFaults | undefined,
): DescribedCheck | undefined {
  if (weighed === undefined) return undefined
  const open = [...weighed.checks, ...weighed.answers.map(answer => answer.asked)]
  const chosen = open.find(({ check }) => check === asked)
  if (chosen !== undefined) return chosen
  return weighed.end === 'not-yet' || isGoingOn ? weighed.checks[0] : undefined
}

/** What kind of appliance the model is, where all that are left open are one kind. */
function typeOf(found: FoundModels | undefined): string {
  if (found === undefined || found.openModels === 0 || found.openModels > found.candidates.length) return ''
  const types = new Set(found.candidates.slice(0, found.openModels).map(model => model.applianceType))
  const [type = ''] = types
  return types.size === 1 ? type : ''
}
