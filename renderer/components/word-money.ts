/** An exact amount with its currency as people write it, thousands apart; the digits are never rounded. */
export function wordMoney({
  price,
  currency,
}: {
  readonly price: string
  readonly currency: string
}): string {
  const parts = new Intl.NumberFormat('en-GB', { style: 'currency', currency }).formatToParts(0)
  const symbol = parts.find(({ type }) => type === 'currency')?.value ?? currency
  const sign = price.startsWith('-') ? '−' : ''
  const [whole = '', ...fraction] = price.replace('-', '').split('.')
  return `${sign}${symbol}${[whole.replace(/\B(?=(?:\d{3})+$)/g, ','), ...fraction].join('.')}`
}
