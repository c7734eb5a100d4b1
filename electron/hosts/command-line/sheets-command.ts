import path from 'node:path'
import type { Output } from '../../../shared-schemas/index.ts'
import { sheetState } from '../../../shared-schemas/order-sheets.ts'
import { alignColumns } from './align-columns.ts'
import type { Answer, Command, Given } from './command.ts'
import { needed, present } from './options.ts'
import { readText } from './read-questions.ts'
import { isAboutSettings, settleSheets } from './sheet-settings.ts'
import { WrongUse } from './wrong-use.ts'

export const sheets: Command = {
  name: 'sheets',
  words: '[<number>...]',
  leastWords: 0,
  mostWords: 100,
  does: 'lists order sheets, shows one, checks and sends them, and writes their files for the supplier',
  options: {
    from: {
      value: 'order.csv',
      does: 'draft a sheet of these lines for --supplier: the file that check takes',
    },
    state: { value: 'state', does: `list only these: ${sheetState.options.join(', ')}`, repeats: true },
    supplier: { value: 'supplier', does: 'list only those of this supplier, or draft one for it' },
    check: { does: 'run the order check on the named drafts' },
    send: { does: 'say that the named checked sheets go to their suppliers' },
    out: { value: 'folder', does: 'write the files of the named sheets into a folder each' },
    settings: { does: 'show who orders, and how --supplier wants its orders' },
    buyer: { value: 'buyer.json', does: 'keep who orders, as --settings shows it' },
    ordering: {
      value: 'ordering.json',
      does: 'keep how --supplier wants its orders: account, columns, signs',
    },
    initials: { value: 'initials', does: 'who does it' },
  },
  shop: 'must-exist',
  async run(given, desk) {
    const numbers = given.words
    if (isAboutSettings(given)) return settleSheets(given, desk.ask)
    if (given.text('from') !== undefined) return draftFrom(given, desk.ask)
    if (numbers.length === 0) return listSheets(given, desk.ask)
    if (given.has('check')) return checkSheets(given, desk.ask)
    if (given.has('send'))
      for (const number of numbers)
        await desk.ask('order-sheets.send-sheet', { number, ...present(given, ['initials']) })
    if (given.text('out') !== undefined) return exportSheets(given, desk.ask)
    return showSheets(given, desk.ask)
  },
}

type Ask = Parameters<Command['run']>[1]['ask']
type Sheet = Output<'order-sheets.read-sheet'>['sheet']

async function listSheets(given: Given, ask: Ask): Promise<Answer> {
  for (const option of ['check', 'send', 'out'])
    if (given.has(option) || given.text(option) !== undefined)
      throw new WrongUse(`Name the sheets that --${option} is about, as: sheets 2026-0007 --${option} …`)
  const states = given.texts('state').map(typed => {
    const read = sheetState.safeParse(typed)
    if (!read.success)
      throw new WrongUse(`--state takes ${sheetState.options.join(', ')}; “${typed}” is none of them.`)
    return read.data
  })
  const value = await ask('order-sheets.list-sheets', {
    ...(states.length === 0 ? {} : { states }),
    ...present(given, ['supplier']),
  })
  const rows = value.sheets.map(sheet => [
    sheet.number,
    sheet.state,
    sheet.supplier,
    `${sheet.currency} ${sheet.total}`,
    `${sheet.lines} ${sheet.lines === 1 ? 'line' : 'lines'}`,
    sheet.toCome > 0 && sheet.sentAt !== null ? `${sheet.toCome} to come` : '',
  ])
  const text = rows.length === 0 ? 'No order sheets.' : alignColumns(rows, [3]).join('\n')
  return { value, text, needsPerson: false }
}

/** The lines of an order file as a draft; a quantity that is not readable is refused, since nobody is asked here. */
async function draftFrom(given: Given, ask: Ask): Promise<Answer> {
  const file = needed(given, 'from', 'sheets')
  const supplier = needed(given, 'supplier', 'sheets --from')
  const { lines } = await ask('order-check.read-order', { text: readText(file), name: file })
  const drafts = lines.map(({ line, partNumber, quantity = 1, ...appliance }) => {
    if (!/^[1-9]\d{0,5}$/.test(String(quantity)))
      throw new WrongUse(`${file}, line ${line}: “${quantity}” is no number of pieces. Nothing was drafted.`)
    return { part: partNumber, quantity: Number(quantity), ...appliance }
  })
  const value = await ask('order-sheets.draft-sheets', {
    sheets: [{ supplier, lines: drafts }],
    ...present(given, ['initials']),
  })
  return { value, text: value.sheets.map(wordSheet).join('\n'), needsPerson: false }
}

async function showSheets(given: Given, ask: Ask): Promise<Answer> {
  const shown: Sheet[] = []
  for (const number of given.words) shown.push((await ask('order-sheets.read-sheet', { number })).sheet)
  return { value: { sheets: shown }, text: shown.map(wordSheet).join('\n\n'), needsPerson: false }
}

async function checkSheets(given: Given, ask: Ask): Promise<Answer> {
  const checked: Output<'order-sheets.check-sheet'>[] = []
  for (const number of given.words)
    checked.push(await ask('order-sheets.check-sheet', { number, ...present(given, ['initials']) }))
  const text = checked.flatMap(({ sheet, checked: { stops, lines } }) => [
    stops === 0 ? `${sheet.number} is checked.` : `${sheet.number} stays a draft: ${stops} to settle.`,
    ...lines.flatMap(({ line, partNumber, flags }) =>
      flags
        .filter(({ severity }) => severity !== 'note')
        .map(flag => `  ${flag.severity.toUpperCase()} line ${line}, ${partNumber}: ${flag.text}`),
    ),
  ])
  return {
    value: { sheets: checked },
    text: text.join('\n'),
    needsPerson: checked.some(one => one.checked.stops > 0),
  }
}

async function exportSheets(given: Given, ask: Ask): Promise<Answer> {
  const folder = path.resolve(needed(given, 'out', 'sheets'))
  const value = await ask('order-sheets.export-sheets', { numbers: [...given.words], folder })
  const lines = value.sheets.flatMap(({ number, supplier, files }) => [
    `${number} for ${supplier}:`,
    ...files.map(file => `  ${file}`),
  ])
  const caution = value.buyerIsNamed
    ? []
    : ['Nobody has said who orders yet: look at the name on the sheets.']
  return { value, text: [...lines, ...caution].join('\n'), needsPerson: false }
}

function wordSheet(sheet: Sheet): string {
  const rows = sheet.lines.map(line => [
    String(line.line),
    line.partNumber,
    line.supplierCode ?? '',
    `${line.quantity} x`,
    line.unitPrice,
    line.amount,
    line.toCome === line.quantity || sheet.sentAt === null ? '' : `${line.toCome} to come`,
    line.description,
  ])
  return [
    `${sheet.number}, ${sheet.state}, for ${sheet.supplierName || sheet.supplier}`,
    ...alignColumns(rows, [0, 3, 4, 5]),
    `Lines ${sheet.net}, carriage ${sheet.carriage}, in all ${sheet.currency} ${sheet.total}`,
  ].join('\n')
}
