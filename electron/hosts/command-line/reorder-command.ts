import path from 'node:path'
import type { Output } from '../../../shared-schemas/index.ts'
import type { Proposal, ProposedLine, ProposedOrder } from '../../../shared-schemas/proposal.ts'
import { alignColumns } from './align-columns.ts'
import type { Command, Desk, Given } from './command.ts'
import { share } from './levels-command.ts'
import { needed, present } from './options.ts'
import { WrongUse } from './wrong-use.ts'

export const reorder: Command = {
  name: 'reorder',
  words: '',
  leastWords: 0,
  mostWords: 0,
  does: 'orders what runs low: an order sheet per supplier, its files in a folder; lines with a stop are held',
  options: {
    out: { value: 'folder', does: 'where the files go, a folder for each order sheet' },
    'as-of': { value: 'date', does: 'levels from the usage up to this day; today unless told' },
    'fill-rate': { value: 'share', does: 'share of the pieces asked for that should be there: 0.95' },
    initials: { value: 'initials', does: 'who orders' },
  },
  shop: 'must-exist',
  async run(given, desk) {
    const folder = path.resolve(needed(given, 'out', 'reorder'))
    const proposal = await desk.ask('proposal.make-proposal', askedLevels(given))
    const sheets = await orderWhatPasses(desk, proposal, { folder, ...present(given, ['initials']) })
    const held = listHeld(proposal)
    const value = { asOf: proposal.asOf, sheets, held, moves: proposal.moves, leftOut: proposal.leftOut }
    return { value, text: wordReorder(value, proposal), needsPerson: held.length > 0 }
  },
}

function askedLevels(given: Given) {
  const { 'as-of': asOf } = present(given, ['as-of'])
  const fillRate = share(given, 'fill-rate')
  if (asOf !== undefined && !/^\d{4}-\d{2}-\d{2}$/.test(asOf))
    throw new WrongUse(`--as-of takes a date such as 2026-11-23; “${asOf}” is none.`)
  return { ...(asOf === undefined ? {} : { asOf }), ...(fillRate === undefined ? {} : { fillRate }) }
}

type WrittenSheets = Output<'order-sheets.export-sheets'>['sheets']

/**
 * Drafts, checks, writes and sends, in this order: what cannot be written is cancelled, so that nothing counts as on order
 * that no supplier can have been given.
 */
async function orderWhatPasses(
  { ask }: Desk,
  { orders }: Proposal,
  { folder, initials }: { readonly folder: string; readonly initials?: string },
): Promise<WrittenSheets> {
  const passing = orders
    .map(({ supplier, lines }) => ({ supplier, lines: lines.filter(line => stopOf(line) === undefined) }))
    .filter(({ lines }) => lines.length > 0)
  if (passing.length === 0) return []
  const who = initials === undefined ? {} : { initials }
  const { sheets } = await ask('order-sheets.draft-sheets', {
    sheets: passing.map(({ supplier, lines }) => ({ supplier, lines: lines.map(asDraftLine) })),
    ...who,
  })
  const numbers = sheets.map(({ number }) => number)
  try {
    for (const number of numbers) await ask('order-sheets.check-sheet', { number, ...who })
    const written = await ask('order-sheets.export-sheets', { numbers, folder })
    for (const number of numbers) await ask('order-sheets.send-sheet', { number, ...who })
    return written.sheets.map(sheet => ({ ...sheet, state: 'sent' }))
  } catch (thrown) {
    for (const number of numbers)
      await ask('order-sheets.cancel-sheet', { number, reason: 'its files were not written', ...who })
    throw thrown
  }
}

function asDraftLine({ partNumber, quantity, unitPrice, pack, supplierCode }: ProposedLine) {
  const code = supplierCode === null ? {} : { supplierCode }
  return { part: partNumber, quantity, unitPrice, pack, ...code }
}

function stopOf({ flags }: ProposedLine): string | undefined {
  return flags.find(({ severity }) => severity === 'stop')?.text
}

/** Lines that a stop holds, and parts that are needed and cannot be ordered before somebody has done something. */
function listHeld({ orders, leftOut }: Proposal): { readonly partNumber: string; readonly why: string }[] {
  const stopped = orders
    .flatMap(({ lines }) => lines)
    .flatMap(line => {
      const why = stopOf(line)
      return why === undefined ? [] : [{ partNumber: line.partNumber, why }]
    })
  const needPerson = leftOut
    .filter(({ why }) => why === 'no-offer' || why === 'minimum-order')
    .map(({ partNumber, text }) => ({ partNumber, why: text }))
  return [...stopped, ...needPerson]
}

function wordReorder(
  {
    asOf,
    sheets,
    held,
  }: {
    readonly asOf: string
    readonly sheets: WrittenSheets
    readonly held: readonly { readonly partNumber: string; readonly why: string }[]
  },
  { orders, moves, leftOut, parts, enough }: Proposal,
): string {
  const rows = sheets.map(({ number, supplier, lines, value, currency }) => [
    number,
    supplier,
    `${lines} lines`,
    `${value} ${currency}`,
    carriageWords(orders.find(order => order.supplier === supplier)),
  ])
  return [
    `Levels of ${asOf}: ${parts} parts looked at, ${enough} have enough.`,
    ...(rows.length === 0 ? ['Nothing is ordered.'] : alignColumns(rows, [3])),
    ...sheets.flatMap(({ files }) => files.slice(0, 1).map(file => `  ${path.dirname(file)}`)),
    ...moves.map(({ quantity, partNumber, from }) => `Bring back: ${quantity} × ${partNumber} from ${from}.`),
    ...held.map(({ partNumber, why }) => `HELD  ${partNumber}: ${why}`),
    ...leftOut
      .filter(({ why }) => why === 'budget' || why === 'not-worth-it' || why === 'covered')
      .map(({ partNumber, text }) => `Left out: ${partNumber}: ${text}`),
  ].join('\n')
}

function carriageWords(order: ProposedOrder | undefined): string {
  if (order === undefined) return ''
  return Number(order.carriage) === 0 ? 'carriage paid' : `carriage ${order.carriage}`
}
