import { alignColumns } from './align-columns.ts'
import type { Command } from './command.ts'
import { present } from './options.ts'

export const onhand: Command = {
  name: 'onhand',
  words: '',
  leastWords: 0,
  mostWords: 0,
  does: 'lists the book: what is on hand, by location and part',
  options: {
    location: { value: 'location', does: 'only this location' },
    part: { value: 'number', does: 'only this part' },
  },
  shop: 'must-exist',
  async run(given, { ask }) {
    const book = await ask('stock-ledger.list-on-hand', present(given, ['location', 'part']))
    const rows = book.rows.map(({ location, partNumber, quantity, bin }) => [
      location,
      partNumber,
      String(quantity),
      bin ?? '',
    ])
    const table = alignColumns([['location', 'part', 'on hand', 'bin'], ...rows], [2])
    return {
      value: book,
      text: rows.length === 0 ? 'Nothing is on hand.' : table.join('\n'),
      needsPerson: false,
    }
  },
}
