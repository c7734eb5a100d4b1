import { readValue } from '../measured-values.ts'
import { RowFault } from './row-fault.ts'

/**
 * An attribute with a unit is a number, a range or alternatives; without one it is words, and anything goes. What
 * could not be read when fit is checked is refused here, where somebody can mend it.
 */
export function checkAttributeValue({
  attribute,
  value,
  unit,
  column,
}: {
  readonly attribute: string
  readonly value: string
  readonly unit: string
  readonly column: string
}): void {
  if (readValue(value, unit) !== undefined) return
  throw new RowFault(column, `“${value}” is no ${attribute} in ${unit}: write 230, 220..240 or 115/230`)
}
