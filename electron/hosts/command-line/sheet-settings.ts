import { buyerDetails, orderingLayout } from '../../../shared-schemas/order-sheets.ts'
import type { Answer, Command, Given } from './command.ts'
import { needed } from './options.ts'
import { readJsonFile } from './read-json-file.ts'

type Ask = Parameters<Command['run']>[1]['ask']

/** Whether the settings of order sheets are asked for or given, not the sheets themselves. */
export function isAboutSettings(given: Given): boolean {
  return given.has('settings') || given.text('buyer') !== undefined || given.text('ordering') !== undefined
}

/** Keeps who orders, and how a supplier wants its orders, where either is given; then shows both. */
export async function settleSheets(given: Given, ask: Ask): Promise<Answer> {
  const [buyer, ordering] = [given.text('buyer'), given.text('ordering')]
  if (buyer !== undefined) await ask('order-sheets.save-buyer', { buyer: readJsonFile(buyerDetails, buyer) })
  if (ordering !== undefined)
    await ask('order-sheets.save-ordering', {
      supplier: needed(given, 'supplier', 'sheets --ordering'),
      ordering: readJsonFile(orderingLayout, ordering),
    })
  const supplier = given.text('supplier')
  const value = {
    ...(await ask('order-sheets.read-buyer', {})),
    ...(supplier === undefined ? {} : await ask('order-sheets.read-ordering', { supplier })),
  }
  return { value, text: JSON.stringify(value, null, 2), needsPerson: false }
}
