import type { FitAnswer } from '../../shared-schemas/fit-check.ts'
import type { ask } from '../bridge/client.ts'

/** What a person may tell of a part that was sold. */
export type Became = 'confirmed' | 'wrong-fit' | 'settled'

export const becameWords: Readonly<Record<Became, string>> = {
  confirmed: 'fitted and confirmed',
  'wrong-fit': 'came back as a wrong fit',
  settled: 'the return is settled',
}

export interface Told {
  readonly became: Became
  readonly job: string
  /** Why it did not fit, or how the return was settled. */
  readonly words: string
  readonly initials: string
}

/** What is still wanted before it can be recorded. */
export function findMissing({ became, job, words, initials }: Told): string | undefined {
  if (became === 'confirmed' && job.trim() === '') return 'Name the job on which it was fitted.'
  if (became === 'wrong-fit' && words.trim() === '') return 'Say why it did not fit; the reason is kept.'
  if (became === 'settled' && words.trim() === '') return 'Say how the return was settled; that is kept.'
  if (!/^\p{L}{1,6}$/u.test(initials.trim())) return 'Sign with your initials: one to six letters.'
  return undefined
}

/** Records it: of the model and the number that the verdict is about, or of its newest return that waits. */
export async function tellOf(
  { model, part, cautions }: FitAnswer,
  { became, job, words, initials }: Told,
  tell: typeof ask,
): Promise<void> {
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
  else {
    const onJob = job.trim() === '' ? {} : { job }
    await tell('fit-check.record-fit', { ...about, ...onJob, kind: became, reason: words })
  }
}
