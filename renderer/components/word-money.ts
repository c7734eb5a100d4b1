/** An exact amount with its currency as people write it; the digits are never rounded. */
export function wordMoney({
  price,
  currency,
}: {
  readonly price: string
  readonly currency: string
}): string {
  const parts = new Intl.NumberFormat('en-GB', { style: 'currency', currency }).formatToParts(0)
  const symbol = parts.find(({ type }) => type === 'currency')?.value ?? currency
  return `${symbol}${price}`
}
