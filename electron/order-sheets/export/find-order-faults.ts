import { Big } from 'big.js'
import { create } from 'xmlbuilder2'
import { z } from 'zod'
import { reckonAmount } from '../reckon-totals.ts'

/**
 * What our own rules find wrong with an Order of UBL 2.1, in words; nothing where it may go out. The schema leaves most
 * of an order optional: here every line has a quantity with its unit, a price and an amount in one currency, and the
 * supplier's number; both parties have names; and everything adds up.
 */
export function findOrderFaults(xml: string): string[] {
  const read = order.safeParse(create(xml).end({ format: 'object' }))
  if (!read.success) return read.error.issues.map(({ path, message }) => `${namePath(path)} ${message}`)
  return findSumFaults(read.data.Order)
}

const text = z.string({ error: 'is missing' }).min(1, 'is empty')
const amount = z.object(
  { '@currencyID': text, '#': text.regex(/^\d+(\.\d+)?$/, 'is no amount') },
  { error: 'is missing, or its currency is' },
)
/** Codes of UN/ECE Recommendation 20 that parts are ordered by: piece, each, one, pair, set, kit, metre. */
const unitCode = z.enum(['H87', 'EA', 'C62', 'PR', 'SET', 'KT', 'MTR'], {
  error: 'is no unit of UN/ECE Recommendation 20 that parts are ordered by',
})
const quantity = z.object(
  { '@unitCode': unitCode, '#': text.regex(/^[1-9]\d*$/, 'is no number of pieces') },
  { error: 'is missing, or its unit is' },
)
const party = z.object(
  {
    'cac:Party': z.object({ 'cac:PartyName': z.object({ 'cbc:Name': text }) }, { error: 'is missing' }),
  },
  { error: 'is missing' },
)
const line = z.object({
  'cac:LineItem': z.object({
    'cbc:ID': text,
    'cbc:Quantity': quantity,
    'cbc:LineExtensionAmount': amount,
    'cac:Price': z.object({ 'cbc:PriceAmount': amount }, { error: 'is missing' }),
    'cac:Item': z.object({
      'cbc:Name': text,
      'cac:SellersItemIdentification': z.object({ 'cbc:ID': text }, { error: 'is missing' }),
    }),
  }),
})

/** Elements that may stand once or several times come as one object or as a list. */
function listOf<Item extends z.ZodType>(item: Item) {
  return z.preprocess(
    value => (value === undefined || Array.isArray(value) ? value : [value]),
    z.array(item, { error: 'is missing' }).min(1),
  )
}

const order = z.object({
  Order: z.object({
    'cbc:ID': text,
    'cbc:IssueDate': z.iso.date('is no date'),
    'cbc:DocumentCurrencyCode': text.refine(
      code => Intl.supportedValuesOf('currency').includes(code),
      'is no currency of ISO 4217',
    ),
    'cac:BuyerCustomerParty': party,
    'cac:SellerSupplierParty': party,
    'cac:AnticipatedMonetaryTotal': z.object(
      {
        'cbc:LineExtensionAmount': amount,
        'cbc:ChargeTotalAmount': amount.optional(),
        'cbc:PayableAmount': amount,
      },
      { error: 'is missing' },
    ),
    'cac:OrderLine': listOf(line),
  }),
})
type Order = z.output<typeof order>['Order']

function findSumFaults(read: Order): string[] {
  const currency = read['cbc:DocumentCurrencyCode']
  const totals = read['cac:AnticipatedMonetaryTotal']
  const items = read['cac:OrderLine'].map(one => one['cac:LineItem'])
  const amounts = [
    totals['cbc:LineExtensionAmount'],
    totals['cbc:PayableAmount'],
    ...(totals['cbc:ChargeTotalAmount'] === undefined ? [] : [totals['cbc:ChargeTotalAmount']]),
    ...items.flatMap(item => [item['cbc:LineExtensionAmount'], item['cac:Price']['cbc:PriceAmount']]),
  ]
  const foreign = amounts.filter(one => one['@currencyID'] !== currency)
  const wrong = items.filter(item => !isRightAmount(item, currency))
  const net = items.reduce((sum, item) => sum.plus(item['cbc:LineExtensionAmount']['#']), new Big(0))
  const total = net.plus(totals['cbc:ChargeTotalAmount']?.['#'] ?? '0')
  const ids = new Set(items.map(item => item['cbc:ID']))
  return [
    ...(foreign.length > 0 ? [`${foreign.length} amounts are not in ${currency}`] : []),
    ...(ids.size < items.length ? ['two lines have the same number'] : []),
    ...wrong.map(item => `line ${item['cbc:ID']} is not its quantity by its price`),
    ...(net.eq(totals['cbc:LineExtensionAmount']['#']) ? [] : [`the lines add up to ${net.toFixed()}`]),
    ...(total.eq(totals['cbc:PayableAmount']['#']) ? [] : [`lines and charges add up to ${total.toFixed()}`]),
  ]
}

function isRightAmount(item: Order['cac:OrderLine'][number]['cac:LineItem'], currency: string): boolean {
  const expected = reckonAmount(
    { quantity: Number(item['cbc:Quantity']['#']), unitPrice: item['cac:Price']['cbc:PriceAmount']['#'] },
    currency,
  )
  return new Big(expected).eq(item['cbc:LineExtensionAmount']['#'])
}

function namePath(path: readonly PropertyKey[]): string {
  return path
    .map(step => (typeof step === 'number' ? String(step + 1) : String(step).replace(/^(cac:|cbc:|@)/, '')))
    .filter(step => step !== '#' && step !== 'Order')
    .join(' ')
}
