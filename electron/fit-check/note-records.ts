import type { Caution, Reason, Verdict } from '../../shared-schemas/fit-check.ts'
import type { PartId } from '../../shared-schemas/identifiers.ts'
import type { FitDecision } from './decide-fit.ts'
import { dayOf, type FitRecord, sourceOfRecord } from './fit-record.ts'

/** What has been recorded, and of what the answer is: records of other models and parts say nothing of it. */
export interface Recorded {
  readonly records: readonly FitRecord[]
  readonly modelIds: ReadonlySet<number>
  readonly partIds: ReadonlySet<PartId>
}

/** The part asked for and every number that takes its place: what came back under one of them speaks of the answer. */
export function partsOfDecision(asked: PartId, { answers }: FitDecision): ReadonlySet<PartId> {
  return new Set([asked, ...answers.flatMap(({ chain }) => chain)])
}

/**
 * A caution for each wrong-fit return that nobody has settled, newest first, on a verdict by which the part would be
 * sold. The verdict itself stays: what forbids a part is said in the catalogue, by a correction.
 */
export function cautionReturns(verdict: Verdict, recorded: Recorded): Caution[] {
  if (verdict !== 'fits' && verdict !== 'fits-with-changes') return []
  return spokenOf(recorded)
    .filter(({ kind, settled }) => kind === 'wrong-fit' && settled === null)
    .reverse()
    .map(record => ({
      code: 'wrong-fit-returned',
      text: `${record.partNumber} came back as a wrong fit from ${nameModel(record)} on ${dayOf(record.at)} (${record.initials}): ${endSentence(record.reason ?? '')} Compare it with the old part before it is sold, and settle the return.`,
      recordId: record.recordId,
    }))
}

/** That the part was fitted and confirmed before: how often, and when last. A note; it decides nothing. */
export function noteConfirmed(recorded: Recorded): Reason[] {
  const confirmed = spokenOf(recorded).filter(({ kind }) => kind === 'confirmed')
  const last = confirmed.at(-1)
  if (last === undefined) return []
  const often = confirmed.length === 1 ? '' : `, ${confirmed.length} times in all`
  const text = `${last.partNumber} was fitted and confirmed in ${nameModel(last)} on ${dayOf(last.at)}, job ${last.job}${often}.`
  return [{ code: 'confirmed', text, source: sourceOfRecord(last) }]
}

function spokenOf({ records, modelIds, partIds }: Recorded): FitRecord[] {
  return records.filter(({ modelId, partId }) => modelIds.has(modelId) && partIds.has(partId))
}

function nameModel({ brand, modelNumber }: FitRecord): string {
  return `${brand} ${modelNumber}`
}

/** A reason as somebody typed it, as the end of a sentence. */
export function endSentence(words: string): string {
  return /[.!?]$/.test(words) ? words : `${words}.`
}
