import { expect, test } from 'vitest'
import { openTestShop } from '../../builders/open-test-shop.ts'

const catalogue = {
  'families.csv': 'family,name\nbelt,Belt\n',
  'parts.csv': 'part_number,family,kind\n512200,belt,genuine\n',
  'suppliers.csv': 'supplier,name,currency,lead_days\nDEALER,Dealer,GBP,2\n',
  'offers.csv': 'supplier,part_number,price\nDEALER,512200,9.00\n',
  'locations.csv': 'location,kind,name\nshop,shop,Shop\n',
}

/** After pieces were received at these costs in turn, the findings on price of an order line. */
async function check(costs: readonly string[], expected: readonly string[]) {
  const shop = await openTestShop(catalogue)
  for (const unitCost of costs)
    await shop.answer('stock-ledger.record-movement', {
      ...{ part: '512200', quantity: 1, from: 'supplier', to: 'shop', reason: 'delivery', unitCost },
    })
  const { lines } = await shop.answer('order-check.check-order', {
    lines: [{ line: 1, partNumber: '512200', quantity: '5' }],
  })
  const priced = lines.flatMap(({ flags }) => flags.filter(({ code }) => code === 'price-far'))
  expect(priced.map(({ text }) => text)).toEqual(expected)
  shop.close()
}

test('a price far from what was paid last is told, and only the last counts', async () => {
  const far = 'DEALER asks 9.00 GBP for 512200; the last one paid was 4.20. Ask before ordering.'
  await check([], [])
  await check(['4.20'], [far])
  await check(['4.20', '8.50'], [])
})
