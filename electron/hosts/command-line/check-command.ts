import path from 'node:path'
import { writeCheckedOrder } from '../../../shared-schemas/checked-order-text.ts'
import type { CheckedLine, CheckedOrder } from '../../../shared-schemas/order-check.ts'
import { alignColumns } from './align-columns.ts'
import type { Command } from './command.ts'
import { present } from './options.ts'
import { readText } from './read-questions.ts'
import { verdictWords } from './verdict-words.ts'
import { refuseOtherFile, writeCheckedFile } from './write-checked-file.ts'

export const check: Command = {
  name: 'check',
  words: '<order.csv>',
  leastWords: 1,
  mostWords: 1,
  does: 'checks a draft order: every line for fit, number, packs and sense, before it is sent',
  options: {
    supplier: { value: 'supplier', does: 'who is to be sent the order; every supplier counts unless told' },
    out: { value: 'checked.csv', does: 'write the lines here, with what was found beside them' },
  },
  shop: 'must-exist',
  async run(given, { ask }) {
    const file = given.words[0] ?? ''
    const text = readText(file)
    const out = given.text('out')
    if (out !== undefined) refuseOtherFile(path.resolve(out))
    const { lines } = await ask('order-check.read-order', { text, name: file })
    const checked = await ask('order-check.check-order', { lines, ...present(given, ['supplier']) })
    if (out !== undefined) writeCheckedFile(path.resolve(out), writeCheckedOrder(lines, checked))
    return { value: checked, text: writeOrder(checked), needsPerson: checked.stops > 0 }
  },
}

/** Each line with its findings under it, stops first, then what the order comes to. */
function writeOrder(order: CheckedOrder): string {
  const headings = alignColumns(order.lines.map(headingOf), [1, 2])
  const lines = order.lines.flatMap(({ flags }, at) => [
    headings[at] ?? '',
    ...flags.map(({ severity, text }) => `  ${severity.toUpperCase().padEnd(8)}${text}`),
  ])
  return [...lines, '', conclude(order)].join('\n')
}

function headingOf({ line, partNumber, quantity, verdict, model, description }: CheckedLine): string[] {
  const fit = verdict === null ? 'for stock' : verdictWords[verdict]
  const appliance = model === null ? '' : `${model.brand} ${model.modelNumber}: `
  return [
    'line',
    String(line),
    quantity === null ? '?' : `${quantity} x`,
    partNumber || 'no number',
    description ?? '',
    `${appliance}${fit}`,
  ]
}

function conclude({ lines, stops, cautions, notes }: CheckedOrder): string {
  const counts = `${count(lines.length, 'line')}: ${count(stops, 'stop')}, ${count(cautions, 'caution')}, ${count(notes, 'note')}.`
  if (stops > 0) return `${counts} Mend the stops before the order is sent.`
  return cautions > 0
    ? `${counts} Nothing stops this order; look at the cautions first.`
    : `${counts} Nothing stops this order.`
}

function count(number: number, what: string): string {
  return `${number.toLocaleString('en')} ${what}${number === 1 ? '' : 's'}`
}
