import type { Output } from '../../shared-schemas/index.ts'
import type { Job, JobPart, JobVisit, ListedJob, WhyNot } from '../../shared-schemas/jobs.ts'

/** The reasons in the words in which people give them (common practice). */
export const whyWords: Readonly<Record<WhyNot, string>> = {
  'wrong-part': 'wrong part',
  'part-not-carried': 'part not carried',
  'part-on-order': 'waiting for a part',
  'no-access': 'no access',
  'customer-away': 'customer away',
  'further-fault': 'further fault found',
  'second-person-needed': 'needs a second person',
  'not-licensed': 'needs a person licensed for it',
  declined: 'customer declined the repair',
  'beyond-repair': 'not worth repairing',
  'no-fault-found': 'no fault found',
  other: 'other',
}

/** Which reasons go with a visit after which there will be another one, and which with giving up. */
export const reasonsOf: Readonly<Record<'not-finished' | 'given-up', readonly WhyNot[]>> = {
  'not-finished': [
    'part-not-carried',
    'wrong-part',
    'part-on-order',
    'further-fault',
    'no-access',
    'customer-away',
    'second-person-needed',
    'not-licensed',
    'other',
  ],
  'given-up': ['declined', 'beyond-repair', 'no-fault-found', 'not-licensed', 'no-access', 'other'],
}

/** How a job stands, in a few words. */
export function wordState({
  state,
  finishedFirstVisit,
}: Pick<ListedJob, 'state' | 'finishedFirstVisit'>): string {
  if (state === 'open') return 'open'
  if (state === 'given-up') return 'given up'
  return finishedFirstVisit ? 'finished at the first visit' : 'finished, not at the first visit'
}

/** What the plate settles, in one sentence. */
export function wordModels({ model, models }: Pick<Job, 'model' | 'models'>): string {
  if (model === '') return 'Nobody has read the plate yet.'
  if (models === null) return 'That is too little to look up, or a brand that is not in the catalogue.'
  if (models.open === 0) return 'No model in the catalogue agrees with that.'
  if (models.settled !== null) {
    const { brand, modelNumber, applianceType } = models.settled
    return `${brand} ${modelNumber}${applianceType === '' ? '' : `, ${applianceType}`}.`
  }
  if (models.open === 1) return `Near ${models.first[0]}, and not the same: check the number on the plate.`
  const more = models.open - models.first.length
  return `Leaves ${models.open} models open: ${models.first.join(', ')}${more > 0 ? ` and ${more} more` : ''}. Verdicts below hold for all of them.`
}

/** One visit in a line. */
export function wordVisit({ outcome, why, note, cause }: JobVisit): string {
  const outcomes = {
    finished: 'Finished',
    'not-finished': 'Not finished',
    'given-up': 'Given up',
    reopened: 'Opened again',
  }
  const said = [why === null || why === 'other' ? '' : whyWords[why], note ?? ''].filter(text => text !== '')
  const reason = said.length === 0 ? '' : `: ${said.join('; ')}`
  return `${outcomes[outcome]}${reason}.${cause === null ? '' : ` Cause: ${cause}.`}`
}

/** What became of a part of the job, as it is said after a scan. */
export function wordInHand({ parts }: Pick<Job, 'parts'>, partNumber: string): string {
  const part = parts.find(one => one.partNumber === partNumber)
  return part === undefined ? '' : ` ${part.inHand} in hand.${warnOfFit(part)}`
}

function warnOfFit({ verdict }: JobPart): string {
  if (verdict === 'does-not-fit') return ' Look out: it does not fit this appliance.'
  if (verdict === 'ask') return ' Whether it fits is not settled.'
  return ''
}

/** What ending a visit did besides. */
export function wordEnded({ job, released, confirmed, notConfirmed }: Output<'jobs.end-visit'>): string {
  const sentences = [
    job.state === 'open' ? 'Written down; the job stays open' : `Job ${job.job} is ${wordState(job)}`,
    ...(released > 0 ? [`${released} kept for it ${released === 1 ? 'is' : 'are'} free again`] : []),
    ...(confirmed.length > 0
      ? [`${confirmed.join(', ')} ${confirmed.length === 1 ? 'is' : 'are'} recorded as fitted and confirmed`]
      : []),
    ...(notConfirmed.length > 0
      ? [`${notConfirmed.join(', ')} could not be recorded as confirmed, since the model number is not whole`]
      : []),
  ]
  return `${sentences.join('. ')}.`
}
