import type { TopUp } from '../../../shared-schemas/van-counts.ts'
import { alignColumns } from './align-columns.ts'
import type { Command } from './command.ts'
import { needed } from './options.ts'
import { WrongUse } from './wrong-use.ts'

export const topup: Command = {
  name: 'topup',
  words: '',
  leastWords: 0,
  mostWords: 0,
  does: 'lists what brings a van back to its list, what is missing, and what does not belong in it',
  options: {
    van: { value: 'van', does: 'which van' },
    prefer: { value: 'kind', does: 'genuine or pattern first; otherwise genuine' },
  },
  shop: 'must-exist',
  async run(given, { ask }) {
    const prefer = given.text('prefer') ?? 'genuine'
    if (prefer !== 'genuine' && prefer !== 'pattern')
      throw new WrongUse(`--prefer takes genuine or pattern; “${prefer}” is neither.`)
    const value = await ask('van-counts.read-top-up', { van: needed(given, 'van', 'topup'), prefer })
    return { value, text: wordTopUp(value), needsPerson: value.shortages.length > 0 }
  },
}

function wordTopUp({ van, lines, shortages, leftovers }: TopUp): string {
  const picks = lines.map(({ quantity, partNumber, from, bin, wanted, instead }) => [
    String(quantity),
    partNumber,
    `${from}${bin === null ? '' : ` ${bin}`}`,
    instead ? `in place of ${wanted}` : wanted,
  ])
  return [
    ...(picks.length === 0 ? [`The shop has nothing to put into ${van}.`] : alignColumns(picks, [0])),
    ...shortages.map(({ wanted, missing, level }) => `Missing: ${missing} of ${wanted} (level ${level}).`),
    ...leftovers.map(({ partNumber, quantity }) => `To bring back: ${quantity} × ${partNumber}.`),
  ].join('\n')
}
