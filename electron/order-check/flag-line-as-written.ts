import type { OrderFlag } from '../../shared-schemas/order-check.ts'
import { wordProblem } from '../../shared-schemas/problem-wording.ts'
import { normaliseNumber } from '../catalogue/normalise-number.ts'
import { flag } from './flag-table.ts'
import type { LineFacts } from './line-facts.ts'

/** What can be said of a line before anything is decided: no part, an unknown one, a quantity or an appliance that cannot be read. */
export function flagLineAsWritten(facts: LineFacts): OrderFlag[] {
  return [...flagNumber(facts), ...flagQuantity(facts), ...flagAppliance(facts)]
}

function flagNumber({ given, part, nearest }: LineFacts): OrderFlag[] {
  if (part !== undefined) return []
  if (normaliseNumber(given.partNumber) === '')
    return [flag('part-missing', 'No part number stands on this line. Write it in, or take the line out.')]
  const compare =
    nearest.length > 0 ? `Compare with ${nearest.join(', ')}.` : 'Check the number on the part or its bag.'
  return [flag('part-unknown', `The catalogue has no part ${given.partNumber}. ${compare}`)]
}

function flagQuantity({ quantity }: LineFacts): OrderFlag[] {
  switch (quantity.kind) {
    case 'stated':
      return []
    case 'assumed':
      return [flag('quantity-assumed', 'No quantity stands on this line; 1 is taken.')]
    case 'unreadable':
      return [
        flag(
          'quantity-unreadable',
          `The quantity “${quantity.typed}” ${quantity.why}. Write a whole number of pieces.`,
        ),
      ]
  }
}

function flagAppliance({ appliance }: LineFacts): OrderFlag[] {
  switch (appliance.kind) {
    case 'none':
    case 'read':
      return []
    case 'incomplete':
      return [
        flag(
          'appliance-incomplete',
          'Fit was not checked: the line names something of an appliance, but no model number. Add it.',
        ),
      ]
    case 'unreadable':
      return [flag('appliance-unreadable', appliance.why)]
    case 'refused':
      return [flag('appliance-unreadable', wordProblem(appliance.problem))]
  }
}
