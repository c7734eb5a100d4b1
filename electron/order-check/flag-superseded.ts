import type { OrderFlag } from '../../shared-schemas/order-check.ts'
import { wordDays } from '../fit-check/made-dates.ts'
import { isProvedOnlyNewer, listDatedReplacements } from './find-current-number.ts'
import { flag } from './flag-table.ts'
import type { LineFacts } from './line-facts.ts'

/**
 * A number that another has replaced. Where only the newer one is proved to fit the line's appliance, ordering the old
 * one is a stop: the verdict does not speak for it.
 */
export function flagSuperseded({ dossier, judged, current: supplied }: LineFacts): OrderFlag[] {
  if (dossier === undefined || supplied === undefined) return []
  const { asked, parts } = dossier
  const { partId: current, chain } = supplied
  const number = (id: typeof current) => parts.get(id)?.partNumber ?? ''
  if (current !== asked.partId) {
    const steps = chain.slice(1).map(number).join(', then by ')
    const text = `${asked.partNumber} is replaced by ${steps}. Order ${number(current)}.`
    return judged !== undefined && isProvedOnlyNewer(judged)
      ? [
          flag(
            'superseded-not-listed',
            `${text} For this appliance only the newer number is proved to fit, not the one written here.`,
          ),
        ]
      : [flag('superseded', text)]
  }
  if (judged !== undefined && judged.decision.current !== null) return []
  const dated = listDatedReplacements(dossier, asked.partId)
  if (dated.length === 0) return []
  const branches = dated.map(
    ({ new: newer, made }) => `${number(newer)} for appliances made ${wordDays(made)}`,
  )
  return [
    flag(
      'superseded-by-date',
      `${asked.partNumber} is replaced by ${branches.join(', by ')}. Say which appliance it is for, with its date of making.`,
    ),
  ]
}
