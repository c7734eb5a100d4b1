import { alignColumns } from './align-columns.ts'
import type { Command, Given } from './command.ts'
import { needed, present, wholeNumber } from './options.ts'
import { WrongUse } from './wrong-use.ts'

export const onhand: Command = {
  name: 'onhand',
  words: '',
  leastWords: 0,
  mostWords: 0,
  does: 'lists the book: what is on hand, by location and part',
  options: {
    location: { value: 'location', does: 'only this location' },
    part: { value: 'number', does: 'only this part' },
    'as-of': { value: 'date', does: 'as it was at the end of this day: 2026-11-23' },
  },
  shop: 'must-exist',
  async run(given, { ask }) {
    const asOf = given.text('as-of')
    const book = await ask('stock-ledger.list-on-hand', {
      ...present(given, ['location', 'part']),
      ...(asOf === undefined ? {} : { asOf }),
    })
    const rows = book.rows.map(({ location, partNumber, quantity, reserved, bin }) => [
      location,
      partNumber,
      String(quantity),
      String(reserved),
      bin ?? '',
    ])
    const table = alignColumns([['location', 'part', 'on hand', 'kept', 'bin'], ...rows], [2, 3])
    return {
      value: book,
      text: rows.length === 0 ? 'Nothing is on hand.' : table.join('\n'),
      needsPerson: false,
    }
  },
}

export const move: Command = {
  name: 'move',
  words: '',
  leastWords: 0,
  mostWords: 0,
  does: 'records that parts went from one place to another',
  options: {
    part: { value: 'number', does: 'which part' },
    quantity: { value: 'number', does: 'how many' },
    from: { value: 'place', does: 'a location, or supplier, customer, job' },
    to: { value: 'place', does: 'a location, or supplier, customer, job, scrap' },
    reason: { value: 'words', does: 'why they are moved' },
    job: { value: 'number', does: 'the job that it belongs to; without --from or --to it is the other side' },
    reference: { value: 'words', does: 'the order sheet, customer or count that it belongs to' },
    cost: { value: 'amount', does: 'what was paid for one' },
    initials: { value: 'initials', does: 'who moved them' },
    early: { does: 'it was used before it was booked: the book may go below zero' },
    kept: { does: 'take what is kept for somebody else' },
  },
  shop: 'must-exist',
  async run(given, { ask }) {
    const [job, cost] = [given.text('job'), given.text('cost')]
    const reference = job ?? given.text('reference')
    const [from, to] = [sideOf(given, 'from', job), sideOf(given, 'to', job)]
    const value = await ask('stock-ledger.record-movement', {
      part: needed(given, 'part', 'move'),
      quantity: wholeNumber(given, 'quantity') ?? missing('quantity'),
      from,
      to,
      reason: needed(given, 'reason', 'move'),
      ...(reference === undefined ? {} : { reference }),
      ...(cost === undefined ? {} : { unitCost: cost }),
      ...present(given, ['initials']),
      usedBeforeBooked: given.has('early'),
      takeReserved: given.has('kept'),
    })
    const { quantity, partNumber, movementId } = value.movement
    return {
      value,
      text: `${quantity} × ${partNumber} from ${value.movement.from} to ${value.movement.to}: ${movementId}`,
      needsPerson: false,
    }
  },
}

/** With a job, the side that is not named is the job. */
function sideOf(given: Given, side: 'from' | 'to', job: string | undefined): string {
  const text = given.text(side)
  if (text !== undefined) return text
  if (job === undefined) return missing(side)
  return 'job'
}

function missing(option: string): never {
  throw new WrongUse(`move needs --${option}. See tallyplate move --help.`)
}
