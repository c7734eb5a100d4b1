import type { FitAnswer } from '../../shared-schemas/fit-check.ts'
import { isCorrection } from '../../shared-schemas/fit-records.ts'
import type { ask } from '../bridge/client.ts'

/** What a person may tell of a part: what became of it, or that the catalogue is to be corrected. */
export type Became = 'confirmed' | 'wrong-fit' | 'settled' | 'excluded' | 'withdrawn'

export const becameWords: Readonly<Record<Became, string>> = {
  confirmed: 'fitted and confirmed',
  'wrong-fit': 'came back as a wrong fit',
  settled: 'the return is settled',
  excluded: 'must not go into this model',
  withdrawn: 'the correction is withdrawn',
}

export const wordsAsked: Readonly<Record<Exclude<Became, 'confirmed'>, string>> = {
  'wrong-fit': 'Why it did not fit',
  settled: 'How it was settled',
  excluded: 'Why it must not',
  withdrawn: 'Why it is withdrawn',
}

export interface Told {
  readonly became: Became
  readonly job: string
  /** Why it did not fit or must not, how the return was settled, or why the correction is withdrawn. */
  readonly words: string
  readonly initials: string
}

/** What can be told of this answer, in the order in which it is offered. */
export function listChoices(answer: FitAnswer): readonly Became[] {
  const isReturned = answer.cautions.some(({ recordId }) => recordId !== undefined)
  const isCorrected = findCorrection(answer) !== undefined
  return [
    'confirmed',
    'wrong-fit',
    ...(isReturned ? (['settled'] as const) : []),
    'excluded',
    ...(isCorrected ? (['withdrawn'] as const) : []),
  ]
}

export interface StandingCorrection {
  readonly source: string
  /** The number that it forbids: that of the part, or of one that stands for it either way. */
  readonly part: string
}

/** The correction of the shop that forbids the part in this model, if there is one. */
export function findCorrection({ why }: FitAnswer): StandingCorrection | undefined {
  const correction = why?.statements.find(({ says, source }) => says === 'excludes' && isCorrection(source))
  return correction && { source: correction.source, part: correction.subject }
}

/** What is still wanted before it can be recorded. */
export function findMissing({ became, job, words, initials }: Told): string | undefined {
  if (became === 'confirmed' && job.trim() === '') return 'Name the job on which it was fitted.'
  if (became !== 'confirmed' && words.trim() === '') return wordsMissing[became]
  if (!/^\p{L}{1,6}$/u.test(initials.trim())) return 'Sign with your initials: one to six letters.'
  return undefined
}

const wordsMissing: Readonly<Record<Exclude<Became, 'confirmed'>, string>> = {
  'wrong-fit': 'Say why it did not fit; the reason is kept.',
  settled: 'Say how the return was settled; that is kept.',
  excluded: 'Say why it must not go into this model; the reason is kept.',
  withdrawn: 'Say why the correction is withdrawn; the reason is kept.',
}

/** Records it: of the model and the number that the verdict is about, or of its newest return that waits. */
export async function tellOf(
  answer: FitAnswer,
  { became, job, words, initials }: Told,
  tell: typeof ask,
): Promise<void> {
  const { model, part, cautions } = answer
  if (became === 'settled') {
    const recordId = cautions.find(caution => caution.recordId !== undefined)?.recordId
    if (recordId === undefined) throw new Error('a return is settled only where one waits')
    await tell('fit-check.settle-wrong-fit', { recordId, how: words, initials })
    return
  }
  if (model === null || part.partNumber === null)
    throw new Error('a fit is recorded only of one model and a part that is in the catalogue')
  const about = { model: model.modelNumber, brand: model.brand, part: part.partNumber, initials }
  if (became === 'confirmed') await tell('fit-check.record-fit', { ...about, kind: became, job })
  else if (became === 'wrong-fit') {
    const onJob = job.trim() === '' ? {} : { job }
    await tell('fit-check.record-fit', { ...about, ...onJob, kind: became, reason: words })
  } else if (became === 'excluded') await tell('fit-check.add-exclusion', { ...about, reason: words })
  else {
    const correction = findCorrection(answer)
    // Somebody else was quicker, and the card has been asked anew meanwhile.
    if (correction === undefined)
      throw new Error('Nothing is left to withdraw: no correction of this shop forbids the part here.')
    await tell('fit-check.withdraw-correction', { ...about, ...correction, reason: words })
  }
}
