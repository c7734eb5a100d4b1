import { openTestShop, type TestShop } from '../../builders/open-test-shop.ts'
import { orderShop } from '../../builders/order-shop.ts'

/** The shop of the order check, whose suppliers have terms. All names are invented. */
export const sheetShop = {
  ...orderShop,
  'suppliers.csv': `supplier,name,currency,minimum_order,carriage,carriage_paid_from,lead_days
DALE,Dale Spares,GBP,25.00,5.95,120.00,2
HOLM,Holm Parts,GBP,,,,3
VELD,Veld Onderdelen,EUR,,14.00,,9
`,
  'offers.csv': `${orderShop['offers.csv']}DALE,P-100,D100,10.005,6,1,1
DALE,S-2,,2.50,1,1,1
`,
}

export function openSheetShop(options?: Parameters<typeof openTestShop>[1]): Promise<TestShop> {
  return openTestShop(sheetShop, options)
}

/** A draft of these pieces by part, for one supplier. */
export async function draft(shop: TestShop, supplier: string, pieces: Readonly<Record<string, number>>) {
  const lines = Object.entries(pieces).map(([part, quantity]) => ({ part, quantity }))
  const { sheets } = await shop.answer('order-sheets.draft-sheets', {
    sheets: [{ supplier, lines }],
    initials: 'ab',
  })
  const [sheet] = sheets
  if (sheet === undefined) throw new Error('one draft was asked for')
  return sheet
}

/** The same, checked and sent. */
export async function send(shop: TestShop, supplier: string, pieces: Readonly<Record<string, number>>) {
  const { number } = await draft(shop, supplier, pieces)
  const { checked } = await shop.answer('order-sheets.check-sheet', { number })
  if (checked.stops > 0) throw new Error(`${number} has stops: ${JSON.stringify(checked.lines)}`)
  return (await shop.answer('order-sheets.send-sheet', { number, initials: 'ab' })).sheet
}
