import { z } from 'zod'
import type { ReadAnswer, Remedy } from '../../shared-schemas/fault-finding.ts'
import { causeEnd } from '../../shared-schemas/fault-guide.ts'
import type { ReadableDatabase, WritableDatabase } from '../database/handles.ts'
import type { KeptProposal } from './judge-proposal.ts'

export interface NewFinding {
  readonly findingId: string
  readonly job: string
  readonly applianceType: string
  readonly symptom: string
  /** What was proposed first; null where the guide could not tell. */
  readonly remedy: Remedy | null
  readonly answers: readonly Pick<ReadAnswer, 'asked' | 'outcome' | 'measured'>[]
  readonly recordedAt: string
  readonly device: string
  readonly initials: string
}

export function appendFinding(database: WritableDatabase, finding: NewFinding): void {
  const { findingId, job, applianceType, symptom, remedy, answers } = finding
  database.run(
    `INSERT INTO fault_finding (fault_finding_id, job, appliance_type, symptom, ends_in, probability, recorded_at, device,
       initials)
     VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)`,
    ...[findingId, job, applianceType, symptom, remedy?.endsIn ?? null, remedy?.probability ?? null],
    ...[finding.recordedAt, finding.device, finding.initials],
  )
  for (const [place, cause] of (remedy?.causes ?? []).entries())
    database.run(
      'INSERT INTO fault_finding_cause (fault_finding_id, place, cause) VALUES (?, ?, ?)',
      ...[findingId, place, cause],
    )
  for (const { family } of remedy?.families ?? [])
    database.run(
      'INSERT INTO fault_finding_family (fault_finding_id, family) VALUES (?, ?)',
      ...[findingId, family],
    )
  for (const [place, { asked, outcome, measured }] of answers.entries())
    database.run(
      `INSERT INTO fault_finding_answer (fault_finding_id, place, check_name, outcome, measured)
       VALUES (?, ?, ?, ?, ?)`,
      ...[findingId, place, asked.check, outcome, measured?.typed ?? null],
    )
}

const listed = z
  .string()
  .transform(text => JSON.parse(text))
  .pipe(z.array(z.string()))
const proposalRow = z.object({ job: z.string(), ends_in: causeEnd, causes: listed, families: listed })

/** What the guide proposed first, by job; of several findings for a job the first. */
export function readProposals(database: ReadableDatabase): ReadonlyMap<string, KeptProposal> {
  return new Map(
    database
      .rows(
        proposalRow,
        `SELECT job, ends_in,
           (SELECT json_group_array(cause ORDER BY place) FROM fault_finding_cause AS named
             WHERE named.fault_finding_id = found.fault_finding_id) AS causes,
           (SELECT json_group_array(family ORDER BY family) FROM fault_finding_family AS named
             WHERE named.fault_finding_id = found.fault_finding_id) AS families
         FROM fault_finding AS found
         WHERE ends_in IS NOT NULL AND fault_finding_id =
           (SELECT min(fault_finding_id) FROM fault_finding AS earlier WHERE earlier.job = found.job)`,
      )
      .map(({ job, ends_in, causes, families }) => [job, { endsIn: ends_in, causes, families }]),
  )
}

export function isJob(database: ReadableDatabase, job: string): boolean {
  return database.row(z.object({ job: z.string() }), 'SELECT job FROM job WHERE job = ?', job) !== undefined
}
