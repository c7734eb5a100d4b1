import type { VerdictEvent } from '../../shared-schemas/fit-records.ts'
import type { Period } from './date-statements.ts'
import { type FitRecord, sourceOfRecord } from './fit-record.ts'
import { endSentence } from './note-records.ts'
import type { PartDossier, Statement } from './part-dossier.ts'
import { wordConditions } from './word-answer.ts'

/** What was said and recorded, in order of time; first what was said before dates were kept. */
export function wordHistory(
  dossier: PartDossier,
  periods: readonly Period[],
  records: readonly FitRecord[],
): VerdictEvent[] {
  const statements = new Map(dossier.statements.map(statement => [statement.termsId, statement]))
  const events = [
    ...periods.flatMap(period => {
      const statement = statements.get(period.termsId)
      return statement === undefined ? [] : wordPeriod(dossier, statement, period)
    }),
    ...records.flatMap(wordRecord),
  ]
  return events.sort(byTime)
}

function wordPeriod(dossier: PartDossier, statement: Statement, { since, until }: Period): VerdictEvent[] {
  const { source } = statement
  const said = wordSaid(dossier, statement)
  const why = since?.correctionReason ?? null
  const text = why === null ? `${said}.` : `${said}: ${endSentence(why)}`
  const began: VerdictEvent = { at: since?.at ?? null, kind: 'said', text, source }
  if (until === null) return [began]
  const whyNot = until.correctionReason === null ? '.' : `; ${endSentence(until.correctionReason)}`
  return [began, { at: until.at, kind: 'withdrawn', text: `No longer said: ${said}${whyNot}`, source }]
}

function wordSaid({ parts, families }: PartDossier, statement: Statement): string {
  const { partId, familyId, says, quantity } = statement
  const subject =
    partId === null ? (familyId === null ? '' : families.get(familyId)?.name) : parts.get(partId)?.partNumber
  const conditions = [...wordConditions(statement), ...(quantity === null ? [] : [`quantity ${quantity}`])]
  const verb = says === 'includes' ? 'listed' : 'must not be used here'
  return [`${subject}: ${verb}`, ...conditions].join(', ')
}

function wordRecord(record: FitRecord): VerdictEvent[] {
  const { recordId, kind, partNumber, job, reason, at, settled } = record
  const onJob = job === null ? '' : `, job ${job}`
  const source = sourceOfRecord(record)
  if (kind === 'confirmed')
    return [{ at, kind, text: `${partNumber} was fitted and confirmed${onJob}.`, source }]
  const text = `${partNumber} came back as a wrong fit${onJob}: ${endSentence(reason ?? '')}`
  if (settled === null) return [{ at, kind, text, source, recordId }]
  const how = `The return of ${partNumber} was settled: ${endSentence(settled.how)}`
  return [
    { at, kind, text, source },
    { at: settled.at, kind: 'settled', text: how, source: sourceOfRecord(settled), recordId },
  ]
}

/** What was taken back in a run stands before what was said instead. */
function byTime(one: VerdictEvent, other: VerdictEvent): number {
  const [a, b] = [one.at ?? '', other.at ?? '']
  if (a !== b) return a < b ? -1 : 1
  return Number(other.kind === 'withdrawn') - Number(one.kind === 'withdrawn')
}
