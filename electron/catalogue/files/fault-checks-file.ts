import { z } from 'zod'
import { type Hazard, hazard, licensedHazard } from '../../../shared-schemas/hazards.ts'
import type { Bindable, WritableDatabase } from '../../database/handles.ts'
import { measures, readExpected } from '../expected-reading.ts'
import { defineFile } from '../loading/catalogue-file.ts'
import { decimal, list, listOf, oneOf, oneOfOrUnknown, text, word, wordOrUnknown } from '../loading/cells.ts'
import { KeyedRows } from '../loading/keyed-rows.ts'
import { type Likelihood, likelihoods } from '../loading/likelihood-cell.ts'
import { RowFault } from '../loading/row-fault.ts'
import { upsert } from '../loading/upsert.ts'

const row = z
  .object({
    appliance_type: word,
    check: word,
    symptoms: list,
    how: text.min(1, 'is empty: write what to do and what to look for'),
    measure: oneOfOrUnknown(...measures),
    expected: wordOrUnknown,
    tolerance: wordOrUnknown,
    outcomes: likelihoods,
    minutes: decimal.transform(Number).refine(minutes => minutes > 0, 'must be above 0'),
    tools: list,
    hazards: listOf('hazard', ...hazard.options),
    competence: oneOf('anyone', 'repairer', 'live-testing'),
    source: wordOrUnknown,
  })
  .superRefine((given, context) => {
    const fault = findReadingFault(given) ?? findHazardFault(given)
    if (fault !== undefined) context.addIssue({ code: 'custom', path: [fault.column], message: fault.reason })
  })

type Given = z.output<typeof row>
type Fault = { readonly column: string; readonly reason: string } | undefined

/** One check of one appliance type a row, in the order in which a person would list them. */
export const faultChecksFile = defineFile({
  name: 'fault_checks.csv',
  row,
  neededColumns: ['appliance_type', 'check', 'how', 'outcomes', 'minutes', 'competence'],
  open: ({ database }) => {
    const rows = new KeyedRows(
      2,
      database.tuples(
        `SELECT appliance_type, check_name, symptoms, how, measure, expected, tolerance, minutes, tools, competence,
           source,
           ifnull((SELECT group_concat(hazard, '|' ORDER BY hazard) FROM fault_check_hazard
             WHERE fault_check_hazard.fault_check_id = fault_check.fault_check_id), ''),
           (SELECT group_concat(outcome || '=' || likelihood, '|' ORDER BY place) FROM fault_check_outcome
             WHERE fault_check_outcome.fault_check_id = fault_check.fault_check_id)
         FROM fault_check`,
      ),
    )
    const symptoms = new Set(
      Array.from(
        database.tuples<[string, string]>('SELECT DISTINCT appliance_type, symptom FROM fault'),
        ([type, symptom]) => nameSymptom(type, symptom),
      ),
    )
    const types = new Set<string>()
    return {
      take(given, line) {
        types.add(given.appliance_type)
        for (const symptom of given.symptoms)
          if (!symptoms.has(nameSymptom(given.appliance_type, symptom)))
            throw new RowFault(
              'symptoms',
              `no symptom of a ${given.appliance_type} is called “${symptom}”: add it to faults.csv, or mend the spelling`,
            )
        const key = [given.appliance_type, given.check]
        const values = [
          given.symptoms.join('|'),
          given.how,
          given.measure,
          given.expected,
          given.tolerance,
          given.minutes,
          given.tools.join('|'),
          given.competence,
          given.source,
        ]
        const hazards = [...given.hazards].sort()
        const outcomes = given.outcomes.map(one => `${one.outcome}=${one.likelihood}`).join('|')
        return rows.write({ key, values: [...values, hazards.join('|'), outcomes], line }, () => {
          const checkId = upsert(
            database,
            `INSERT INTO fault_check (appliance_type, check_name, symptoms, how, measure, expected, tolerance, minutes,
               tools, competence, source)
             VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
             ON CONFLICT (appliance_type, check_name) DO UPDATE SET symptoms = excluded.symptoms, how = excluded.how,
               measure = excluded.measure, expected = excluded.expected, tolerance = excluded.tolerance,
               minutes = excluded.minutes, tools = excluded.tools, competence = excluded.competence,
               source = excluded.source
             RETURNING fault_check_id AS id`,
            ...key,
            ...values,
          )
          writeHazards(database, checkId, hazards)
          writeOutcomes(database, checkId, given.outcomes)
        })
      },
      retireUnsaid() {
        const unsaid = [...rows.unstated()].filter(([type]) => types.has(String(type)))
        for (const key of unsaid) removeCheck(database, key)
        return unsaid.length
      },
    }
  },
})

function removeCheck(database: WritableDatabase, key: readonly Bindable[]): void {
  const ofCheck = '(SELECT fault_check_id FROM fault_check WHERE appliance_type = ? AND check_name = ?)'
  for (const table of ['fault_outcome', 'fault_check_outcome', 'fault_check_hazard', 'fault_check'])
    database.run(`DELETE FROM ${table} WHERE fault_check_id = ${ofCheck}`, ...key)
}

function nameSymptom(type: string, symptom: string): string {
  return `${type}\u001f${symptom}`
}

function writeHazards(database: WritableDatabase, checkId: number, hazards: readonly Hazard[]): void {
  database.run('DELETE FROM fault_check_hazard WHERE fault_check_id = ?', checkId)
  for (const one of hazards)
    database.run('INSERT INTO fault_check_hazard (fault_check_id, hazard) VALUES (?, ?)', checkId, one)
}

/** What was said of causes in outcomes that the check no longer has means nothing, and goes with them. */
function writeOutcomes(database: WritableDatabase, checkId: number, outcomes: readonly Likelihood[]): void {
  database.run('DELETE FROM fault_check_outcome WHERE fault_check_id = ?', checkId)
  for (const [place, { outcome, likelihood }] of outcomes.entries())
    database.run(
      'INSERT INTO fault_check_outcome (fault_check_id, place, outcome, likelihood) VALUES (?, ?, ?, ?)',
      checkId,
      place,
      outcome,
      likelihood,
    )
  database.run(
    `DELETE FROM fault_outcome WHERE fault_check_id = ?1 AND cause IN (
       SELECT cause FROM fault_outcome WHERE fault_check_id = ?1 AND outcome NOT IN (
         SELECT outcome FROM fault_check_outcome WHERE fault_check_id = ?1))`,
    checkId,
  )
}

/** A measured check is judged by arithmetic, so that its outcomes are those that arithmetic can give. */
function findReadingFault({ measure, expected, tolerance, outcomes }: Given): Fault {
  if (measure === null) {
    if (expected !== null)
      return {
        column: 'measure',
        reason: `is empty, and a reading is expected: write ${measures.join(' or ')}`,
      }
    return tolerance === null
      ? undefined
      : { column: 'tolerance', reason: 'goes with a reading that is expected: empty it' }
  }
  if (expected === null) return { column: 'expected', reason: 'is empty: write what a good one reads' }
  const read = readExpected(measure, expected, tolerance)
  if (!read.ok) return read
  return findOutcomesFault(
    outcomes.map(({ outcome }) => outcome),
    measure === 'resistance',
  )
}

function findOutcomesFault(outcomes: readonly string[], mayBeOpen: boolean): Fault {
  const sets = [
    ['within', 'outside'],
    ['within', 'low', 'high'],
    ...(mayBeOpen ? [['within', 'low', 'high', 'open']] : []),
  ]
  const isOne = sets.some(set => set.length === outcomes.length && set.every(one => outcomes.includes(one)))
  if (isOne) return undefined
  const named = sets.map(set => set.join('|')).join(', or ')
  return { column: 'outcomes', reason: `must be those of a reading: ${named}, each with its likelihood` }
}

function findHazardFault({ hazards, competence }: Given): Fault {
  const licensed = hazards.find(one => licensedHazard.safeParse(one).success)
  if (licensed !== undefined)
    return {
      column: 'hazards',
      reason: `names ${licensed}: no check is given for such work; leave the row out, and write its causes as licensed`,
    }
  const opened = hazards.find(one => one === 'mains' || one === 'stored-charge')
  if (competence === 'anyone' && opened !== undefined)
    return { column: 'competence', reason: `cannot be anyone where ${opened} is near: write repairer` }
  return undefined
}
