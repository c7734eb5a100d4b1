import { keepPreviousData, useQuery } from '@tanstack/react-query'
import { ask } from '../bridge/client.ts'
import { useSettled } from '../components/use-settled.ts'
import { type CounterEnquiry, questionOf } from './counter-enquiry.ts'

/** Everything the engine has answered to this enquiry. */
export function useCounterAnswers(enquiry: CounterEnquiry) {
  const summary = useQuery({
    queryKey: ['catalogue.read-summary'],
    queryFn: () => ask('catalogue.read-summary', {}),
    staleTime: Number.POSITIVE_INFINITY,
  })
  const found = useFoundModels(enquiry)
  const fit = useFit(enquiry, found)
  return { summary, found, ...fit }
}

export type CounterAnswers = ReturnType<typeof useCounterAnswers>

type FoundQuery = ReturnType<typeof useFoundModels>

function useFoundModels({ text, brand }: CounterEnquiry) {
  const typed = text.trim()
  return useQuery({
    queryKey: ['model-lookup.find-models', typed, brand],
    queryFn: () =>
      ask('model-lookup.find-models', { text: typed, top: mostListed, ...(brand === '' ? {} : { brand }) }),
    placeholderData: keepPreviousData,
    enabled: typed !== '',
  })
}

export const mostListed = 24

function useFit(enquiry: CounterEnquiry, found: FoundQuery) {
  const wanted = questionOf(enquiry)
  const isDecided = enquiry.taken !== null || (found.data?.outcome === 'exact' && !found.isPlaceholderData)
  const openModels = enquiry.taken === null ? (found.data?.openModels ?? 0) : 1
  const isTooWide = openModels > mostListedTogether
  // One engine answers everything in turn: while somebody is still typing, a long list would hold up the next look-up.
  // The more models are open, the longer the list takes, and the surer the pause must be.
  const pause = pauseMilliseconds + (isTooWide ? 0 : openModels * pauseForEachModel)
  const question = useSettled(wanted, isDecided ? 0 : pause)
  const part = useSettled(enquiry.part.trim(), pauseMilliseconds)
  const isQuestionCurrent = JSON.stringify(question) === JSON.stringify(wanted)
  // How many models are open is known only once the look-up of this very text has answered.
  const isListable = enquiry.taken !== null || (!isTooWide && !found.isPlaceholderData && openModels > 0)
  const isAskable = question.model !== '' && enquiry.text.trim() !== ''
  const fitting = useQuery({
    queryKey: ['fit-check.list-fitting-parts', question],
    queryFn: () => ask('fit-check.list-fitting-parts', question),
    // A new answer is new through and through; comparing two long lists leaf by leaf would only cost the frame.
    structuralSharing: false,
    placeholderData: keepPreviousData,
    enabled: isAskable && isQuestionCurrent && isListable,
  })
  const judged = useQuery({
    queryKey: ['fit-check.judge-fit', question, part],
    queryFn: () => ask('fit-check.judge-fit', { ...question, part }),
    enabled: isAskable && part !== '',
  })
  return {
    fitting,
    /** So many models are open that a list of what fits them all would say little. */
    isTooWide,
    /** The list on the screen answers another question than the one that now stands; the right one is on its way. */
    isListStale: !isQuestionCurrent || fitting.isPlaceholderData,
    judged,
    /** A verdict is shown for the very question and number that stand, or not at all. */
    verdict: isQuestionCurrent && part === enquiry.part.trim() ? judged.data : undefined,
  }
}

/** A list over more models than this takes the engine longer than a person waits. */
export const mostListedTogether = 24

const pauseMilliseconds = 180
const pauseForEachModel = 10
