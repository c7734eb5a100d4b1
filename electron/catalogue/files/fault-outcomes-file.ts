import { z } from 'zod'
import type { ReadableDatabase } from '../../database/handles.ts'
import { defineFile } from '../loading/catalogue-file.ts'
import { word } from '../loading/cells.ts'
import { KeyedRows } from '../loading/keyed-rows.ts'
import { type Likelihood, likelihoods } from '../loading/likelihood-cell.ts'
import { RowFault } from '../loading/row-fault.ts'

/** How the outcomes of a check fall under one cause, where they fall otherwise than in `fault_checks.csv`. */
export const faultOutcomesFile = defineFile({
  name: 'fault_outcomes.csv',
  row: z.object({ appliance_type: word, check: word, cause: word, outcomes: likelihoods }),
  neededColumns: ['appliance_type', 'check', 'cause', 'outcomes'],
  open: ({ database }) => {
    const rows = new KeyedRows(
      2,
      database.tuples(
        `SELECT fault_check_id, cause, group_concat(outcome || '=' || said.likelihood, '|' ORDER BY place)
         FROM fault_outcome AS said JOIN fault_check_outcome USING (fault_check_id, outcome)
         GROUP BY fault_check_id, cause`,
      ),
    )
    const guide = readNamesOfGuide(database)
    const checkIds = new Set<string>()
    return {
      take({ appliance_type: type, check, cause, outcomes }, line) {
        const known = guide.checks.get(joinNames(type, check))
        if (known === undefined)
          throw new RowFault(
            'check',
            `no check of a ${type} is called “${check}”: add it to fault_checks.csv, or mend the spelling`,
          )
        if (!guide.causes.has(joinNames(type, cause)))
          throw new RowFault(
            'cause',
            `no cause of a ${type} is called “${cause}”: add it to faults.csv, or mend the spelling`,
          )
        checkIds.add(String(known.checkId))
        const inOrder = orderAsListed(outcomes, known.outcomes)
        const values = [inOrder.map(one => `${one.outcome}=${one.likelihood}`).join('|')]
        return rows.write({ key: [known.checkId, cause], values, line }, () => {
          database.run(
            'DELETE FROM fault_outcome WHERE fault_check_id = ? AND cause = ?',
            known.checkId,
            cause,
          )
          for (const { outcome, likelihood } of inOrder)
            database.run(
              'INSERT INTO fault_outcome (fault_check_id, cause, outcome, likelihood) VALUES (?, ?, ?, ?)',
              known.checkId,
              cause,
              outcome,
              likelihood,
            )
        })
      },
      retireUnsaid() {
        const unsaid = [...rows.unstated()].filter(([checkId]) => checkIds.has(String(checkId)))
        for (const [checkId, cause] of unsaid)
          database.run(
            'DELETE FROM fault_outcome WHERE fault_check_id = ? AND cause = ?',
            Number(checkId),
            String(cause),
          )
        return unsaid.length
      },
    }
  },
})

interface NamesOfGuide {
  readonly checks: ReadonlyMap<string, { readonly checkId: number; readonly outcomes: readonly string[] }>
  readonly causes: ReadonlySet<string>
}

function readNamesOfGuide(database: ReadableDatabase): NamesOfGuide {
  const checks = new Map<string, { readonly checkId: number; readonly outcomes: string[] }>()
  for (const [type, check, checkId, outcome] of database.tuples<[string, string, number, string]>(
    `SELECT appliance_type, check_name, fault_check_id, outcome
     FROM fault_check JOIN fault_check_outcome USING (fault_check_id) ORDER BY fault_check_id, place`,
  )) {
    const name = joinNames(type, check)
    const known = checks.get(name)
    if (known === undefined) checks.set(name, { checkId, outcomes: [outcome] })
    else known.outcomes.push(outcome)
  }
  const causes = database.tuples<[string, string]>('SELECT DISTINCT appliance_type, cause FROM fault')
  return { checks, causes: new Set(Array.from(causes, ([type, cause]) => joinNames(type, cause))) }
}

function joinNames(type: string, name: string): string {
  return `${type}\u001f${name}`
}

/** Every outcome of the check, and no other, in the order in which the check lists them. */
function orderAsListed(given: readonly Likelihood[], listed: readonly string[]): readonly Likelihood[] {
  const byOutcome = new Map(given.map(one => [one.outcome, one]))
  const inOrder = listed.flatMap(outcome => byOutcome.get(outcome) ?? [])
  if (inOrder.length === listed.length && given.length === listed.length) return inOrder
  throw new RowFault('outcomes', `must be the outcomes of the check, each once: ${listed.join(', ')}`)
}
