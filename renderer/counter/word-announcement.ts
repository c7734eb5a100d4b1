import { verdictWords } from '../components/verdict-words.ts'
import { wordFamilies, wordOutcome } from './outcome-words.ts'
import type { Counter } from './use-counter.ts'

type Spoken = Pick<Counter, 'enquiry' | 'found' | 'list' | 'part' | 'question'>

/** The state of the enquiry in a breath: the model, the verdict or how many families fit, and what is asked. */
export function wordAnnouncement({ enquiry, found, list, part, question }: Spoken): string {
  if (found === undefined) return ''
  return [
    wordOutcome(found, enquiry.taken),
    part !== undefined
      ? `${part.part.typed}: ${verdictWords[part.verdict]}.`
      : list !== undefined
        ? wordFamilies(list.families, list.models)
        : '',
    question?.sentence ?? '',
  ]
    .filter(Boolean)
    .join(' ')
}
