import type { StockLevels } from '../../../shared-schemas/stock-levels.ts'
import { alignColumns } from './align-columns.ts'
import type { Command, Given } from './command.ts'
import { present, wholeNumber } from './options.ts'
import { WrongUse } from './wrong-use.ts'

export const levels: Command = {
  name: 'levels',
  words: '',
  leastWords: 0,
  mostWords: 0,
  does: 'lists how much of each part should be there, from what was used up to a day',
  options: {
    'as-of': { value: 'date', does: 'the last day that counts; otherwise today' },
    'fill-rate': {
      value: 'share',
      does: 'of the pieces asked for, how many all parts together give at once: 0.95',
    },
    bucket: { value: 'week|month', does: 'demand by weeks or by months' },
    'lead-days': { value: 'days', does: "in place of every supplier's own lead time" },
    'review-days': { value: 'days', does: 'from one reorder to the next' },
  },
  shop: 'must-exist',
  async run(given, { ask }) {
    const bucket = given.text('bucket')
    if (bucket !== undefined && bucket !== 'week' && bucket !== 'month')
      throw new WrongUse(`--bucket takes week or month; “${bucket}” is neither.`)
    const { 'as-of': asOf } = present(given, ['as-of'])
    const [leadDays, reviewDays] = [wholeNumber(given, 'lead-days'), wholeNumber(given, 'review-days')]
    const fillRate = share(given, 'fill-rate')
    const value = await ask('reorder.list-levels', {
      ...(asOf === undefined ? {} : { asOf }),
      ...(bucket === undefined ? {} : { bucket }),
      ...(fillRate === undefined ? {} : { fillRate }),
      ...(leadDays === undefined ? {} : { leadDays }),
      ...(reviewDays === undefined ? {} : { reviewDays }),
    })
    return { value, text: wordLevels(value), needsPerson: false }
  },
}

export function share(given: Given, option: string): number | undefined {
  const text = given.text(option)
  if (text === undefined) return undefined
  const found = /^0?\.\d{1,6}$/.test(text) ? Number(text) : Number.NaN
  if (!(found >= 0.5 && found <= 0.999))
    throw new WrongUse(`--${option} takes a share from 0.5 to 0.999, such as 0.95; “${text}” is none.`)
  return found
}

function wordLevels({ asOf, bucket, targetFillRate, expectedFillRate, rows }: StockLevels): string {
  const sold = rows.filter(({ life }) => life !== 'unused' && life !== 'replaced')
  const lines = sold.map(row => [
    row.partNumber,
    row.demandClass,
    row.valueClass ?? '',
    row.meanPerBucket.toFixed(2),
    String(row.reorderPoint),
    String(row.orderUpTo),
    inPercent(row.expectedFillRate),
    inPercent(row.cycleService),
  ])
  if (sold.length === 0)
    return `Nothing was asked for up to ${asOf}. Load usage.csv, or give a later --as-of.`
  return [
    `Usage up to ${asOf}; of the pieces asked for, ${inPercent(expectedFillRate)} are expected to be there (wanted ${inPercent(targetFillRate)}).`,
    ...alignColumns(
      [['part', 'demand', 'ABC', `a ${bucket}`, 'order at', 'up to', 'fill rate', 'cycle service'], ...lines],
      [3, 4, 5, 6, 7],
    ),
    ...(sold.length < rows.length
      ? [`${rows.length - sold.length} parts were never asked for, or another number stands for them.`]
      : []),
  ].join('\n')
}

function inPercent(share: number): string {
  return `${(100 * share).toFixed(1)} %`
}
