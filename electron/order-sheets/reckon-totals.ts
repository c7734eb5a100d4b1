import { Big } from 'big.js'

export interface PricedLine {
  readonly quantity: number
  /** For one piece. */
  readonly unitPrice: string
}

/** What a supplier asks for carriage, and from which order value on it asks for none; null is not said. */
export interface CarriageTerms {
  readonly carriage: string | null
  readonly carriagePaidFrom: string | null
}

export interface SheetTotals {
  readonly net: string
  readonly carriage: string
  readonly total: string
}

/** Quantity by price, rounded half up to the smallest coin of the currency. */
export function reckonAmount({ quantity, unitPrice }: PricedLine, currency: string): string {
  return wordMoney(new Big(unitPrice).times(quantity), currency)
}

/** The sum of the rounded lines, so that whoever adds the sheet up gets the same; then the carriage, then both. */
export function reckonTotals(
  lines: readonly PricedLine[],
  { carriage, currency }: { readonly carriage: string; readonly currency: string },
): SheetTotals {
  const net = lines.reduce((sum, line) => sum.plus(reckonAmount(line, currency)), new Big(0))
  return {
    net: wordMoney(net, currency),
    carriage: wordMoney(new Big(carriage), currency),
    total: wordMoney(net.plus(wordMoney(new Big(carriage), currency)), currency),
  }
}

/** Carriage by the supplier's terms for this order value. */
export function reckonCarriage(net: string, { carriage, carriagePaidFrom }: CarriageTerms): string {
  const isPaid = carriagePaidFrom !== null && new Big(net).gte(carriagePaidFrom)
  return carriage === null || isPaid ? '0' : carriage
}

/** How much is missing to the supplier's minimum order; null where nothing is. */
export function reckonShortfall(net: string, minimumOrder: string | null, currency: string): string | null {
  if (minimumOrder === null || new Big(net).gte(minimumOrder)) return null
  return wordMoney(new Big(minimumOrder).minus(net), currency)
}

function wordMoney(amount: Big, currency: string): string {
  return amount.toFixed(minorDigits(currency), Big.roundHalfUp)
}

/** Digits after the point as ISO 4217 gives them, by way of Intl; a currency that it does not know has two. */
function minorDigits(currency: string): number {
  const { maximumFractionDigits } = new Intl.NumberFormat('en', {
    style: 'currency',
    currency,
  }).resolvedOptions()
  return maximumFractionDigits ?? 2
}
