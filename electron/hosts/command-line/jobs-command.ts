import type { Output } from '../../../shared-schemas/index.ts'
import type { Job } from '../../../shared-schemas/jobs.ts'
import { alignColumns } from './align-columns.ts'
import type { Command, Given } from './command.ts'
import { present } from './options.ts'
import { verdictWords } from './verdict-words.ts'
import { WrongUse } from './wrong-use.ts'

export const jobs: Command = {
  name: 'jobs',
  words: '[number]',
  leastWords: 0,
  mostWords: 1,
  does: 'lists jobs, the latest first; or tells all of one: what it needs, what was taken, fitted and brought back',
  options: {
    state: { value: 'state', does: 'open, ended or all; otherwise open' },
    van: { value: 'van', does: 'only those of this van' },
    text: { value: 'words', does: 'part of the number, the model, the symptom or the customer’s reference' },
  },
  shop: 'must-exist',
  async run(given, { ask }) {
    const [number] = given.words
    if (number !== undefined) {
      const job = await ask('jobs.read-job', { job: number })
      return { value: job, text: wordJob(job), needsPerson: job.openedOn.length > 1 }
    }
    const value = await ask('jobs.list-jobs', { ...present(given, ['van', 'text']), state: stateOf(given) })
    return { value, text: wordJobs(value), needsPerson: false }
  },
}

function stateOf(given: Given): 'open' | 'ended' | 'all' {
  const state = given.text('state') ?? 'open'
  if (state === 'open' || state === 'ended' || state === 'all') return state
  throw new WrongUse(`--state takes open, ended or all; “${state}” is none of them.`)
}

function wordJobs({ jobs: listed, more }: Output<'jobs.list-jobs'>): string {
  if (listed.length === 0) return 'There is no such job.'
  const rows = listed.map(({ job, date, van, brand, model, symptom, state, inHand }) => [
    ...[job, date, van ?? '', state, `${brand ?? ''} ${model}`.trim(), symptom],
    inHand > 0 ? `${inHand} in hand` : '',
  ])
  return [...alignColumns(rows), ...(more ? ['There are more: narrow them by --text or --van.'] : [])].join(
    '\n',
  )
}

function wordJob(job: Job): string {
  const model = `${job.brand ?? ''} ${job.model}`.trim() || 'no model read'
  const parts = job.parts.map(({ partNumber, verdict, taken, fitted, broughtBack, inHand }) => [
    ...[`  ${partNumber}`, verdict === null ? '' : verdictWords[verdict]],
    `${taken} taken, ${fitted} fitted, ${broughtBack} brought back, ${inHand} in hand`,
  ])
  return [
    `${job.job}, ${job.date}, ${job.state}: ${model}. ${job.symptom}`,
    ...job.needs.map(
      ({ quantity, familyName, partNumber, isMet }) =>
        `  needs ${quantity} × ${partNumber ?? familyName}${isMet ? ', taken' : ''}`,
    ),
    ...alignColumns(parts),
  ].join('\n')
}
