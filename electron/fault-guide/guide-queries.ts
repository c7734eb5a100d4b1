import { z } from 'zod'
import {
  causeEnd,
  competence,
  type FaultCause,
  type FaultCheck,
  type FaultSymptom,
} from '../../shared-schemas/fault-guide.ts'
import { hazard, licensedHazard } from '../../shared-schemas/hazards.ts'
import { type Measure, measures, measureUnits } from '../catalogue/expected-reading.ts'
import { readLicensedFamilies } from '../catalogue/licensed-families-queries.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import type { GuideOfSymptom } from './guide.ts'

const listedWords = z.string().transform(cell => (cell === '' ? [] : cell.split('|')))

const symptomRow = z.object({ appliance_type: z.string(), symptom: z.string(), also_said: listedWords })

/** Every symptom that the guide knows, of one appliance type or of all, as they are listed. */
export function listSymptoms(database: ReadableDatabase, applianceType: string | null): FaultSymptom[] {
  return database
    .rows(
      symptomRow,
      `SELECT appliance_type, symptom,
         ifnull(group_concat(nullif(also_said, ''), '|' ORDER BY fault_id), '') AS also_said
       FROM fault WHERE ?1 IS NULL OR appliance_type = ?1
       GROUP BY appliance_type, symptom ORDER BY min(fault_id)`,
      applianceType,
    )
    .map(row => ({
      applianceType: row.appliance_type,
      symptom: row.symptom,
      alsoSaid: [...new Set(row.also_said)],
    }))
}

/** What the guide says of a symptom, or nothing where it has none of that name. */
export function readGuide(
  database: ReadableDatabase,
  { applianceType, symptom }: { readonly applianceType: string; readonly symptom: string },
): GuideOfSymptom | undefined {
  const causes = listCauses(database, applianceType, symptom)
  if (causes.length === 0) return undefined
  const named = new Set(causes.map(({ cause }) => cause))
  return { causes, checks: listChecks(database, { applianceType, symptom, named }) }
}

const causeRow = z.object({
  fault_id: z.int(),
  cause: z.string(),
  ends_in: causeEnd,
  licensed_for: licensedHazard.nullable(),
  weight: z.number(),
  advice: z.string(),
  source: z.string().nullable(),
})

const familyRow = z.object({
  fault_id: z.int(),
  family_id: z.int(),
  family: z.string(),
  name: z.string(),
  safety_device: z.int(),
})

function listCauses(database: ReadableDatabase, applianceType: string, symptom: string): FaultCause[] {
  const families = Map.groupBy(
    database.rows(
      familyRow,
      `SELECT fault_id, family_id, family, name, safety_device
       FROM fault JOIN fault_family USING (fault_id) JOIN family USING (family_id)
       WHERE appliance_type = ? AND symptom = ? ORDER BY fault_id, family_id`,
      applianceType,
      symptom,
    ),
    row => row.fault_id,
  )
  const licensed = readLicensedFamilies(database)
  return database
    .rows(
      causeRow,
      `SELECT fault_id, cause, ends_in, licensed_for, weight, advice, source
       FROM fault WHERE appliance_type = ? AND symptom = ? ORDER BY fault_id`,
      applianceType,
      symptom,
    )
    .map(row => {
      const ofCause = families.get(row.fault_id) ?? []
      // A family may have been given a hazard since the guide was loaded: its work has no steps from then on.
      const since = ofCause.flatMap(({ family_id }) => licensed.get(family_id) ?? [])[0]
      const licensedFor = row.licensed_for ?? since ?? null
      return {
        cause: row.cause,
        endsIn: licensedFor === null ? row.ends_in : 'licensed',
        licensedFor,
        families: ofCause.map(({ family, name, safety_device }) => ({
          family,
          name,
          safetyDevice: safety_device === 1,
        })),
        weight: row.weight,
        advice: licensedFor === null ? row.advice : '',
        source: row.source,
      }
    })
}

const checkRow = z.object({
  fault_check_id: z.int(),
  check_name: z.string(),
  symptoms: listedWords,
  how: z.string(),
  measure: z.enum(measures).nullable(),
  expected: z.string().nullable(),
  tolerance: z.string().nullable(),
  minutes: z.number(),
  tools: listedWords,
  hazards: listedWords.pipe(z.array(hazard)),
  competence,
  source: z.string().nullable(),
})

const outcomeRow = z.object({
  fault_check_id: z.int(),
  /** Null: how likely it is otherwise. */
  cause: z.string().nullable(),
  outcome: z.string(),
  likelihood: z.number(),
})

/** The checks that may be made for a symptom and that tell one of the named causes from the others. */
function listChecks(
  database: ReadableDatabase,
  {
    applianceType,
    symptom,
    named,
  }: { readonly applianceType: string; readonly symptom: string; readonly named: ReadonlySet<string> },
): FaultCheck[] {
  const outcomes = Map.groupBy(
    database.rows(
      outcomeRow,
      `SELECT fault_check_id, NULL AS cause, outcome, likelihood, place
         FROM fault_check JOIN fault_check_outcome USING (fault_check_id) WHERE appliance_type = ?1
       UNION ALL
       SELECT fault_check_id, cause, outcome, said.likelihood, place
         FROM fault_check JOIN fault_outcome AS said USING (fault_check_id)
           JOIN fault_check_outcome USING (fault_check_id, outcome) WHERE appliance_type = ?1
       ORDER BY fault_check_id, cause, place`,
      applianceType,
    ),
    row => row.fault_check_id,
  )
  return database
    .rows(
      checkRow,
      `SELECT fault_check_id, check_name, symptoms, how, measure, expected, tolerance, minutes, tools, competence,
         source,
         ifnull((SELECT group_concat(hazard, '|' ORDER BY hazard) FROM fault_check_hazard
           WHERE fault_check_hazard.fault_check_id = fault_check.fault_check_id), '') AS hazards
       FROM fault_check WHERE appliance_type = ? ORDER BY fault_check_id`,
      applianceType,
    )
    .filter(({ symptoms }) => symptoms.length === 0 || symptoms.includes(symptom))
    .map(row => describeCheck(row, outcomes.get(row.fault_check_id) ?? []))
    .filter(({ byCause }) => byCause.some(({ cause }) => named.has(cause)))
}

function describeCheck(
  row: z.output<typeof checkRow>,
  outcomes: readonly z.output<typeof outcomeRow>[],
): FaultCheck {
  const byCause = Map.groupBy(outcomes, ({ cause }) => cause)
  const otherwise = byCause.get(null) ?? []
  byCause.delete(null)
  return {
    check: row.check_name,
    how: row.how,
    measure: row.measure,
    unit: row.measure === null ? null : unitOf(row.measure),
    expected: row.expected,
    tolerance: row.tolerance,
    minutes: row.minutes,
    tools: row.tools,
    hazards: row.hazards,
    competence: row.competence,
    source: row.source,
    outcomes: otherwise.map(({ outcome }) => outcome),
    otherwise: otherwise.map(({ likelihood }) => likelihood),
    byCause: Array.from(byCause, ([cause, said]) => ({
      cause: cause ?? '',
      likelihoods: said.map(({ likelihood }) => likelihood),
    })),
  }
}

function unitOf(measure: Measure): string {
  return measureUnits[measure]
}
