/** Cost of one order, of holding one piece for a year, and pieces asked for in a year. */
export interface OrderCosts {
  readonly perOrder: number
  readonly holding: number
  readonly yearly: number
}

/** Economic order quantity, the square root of 2 K d / h (Harris, Factory, The Magazine of Management 10, 1913). */
export function economicQuantity({ perOrder, holding, yearly }: OrderCosts): number {
  return Math.sqrt((2 * perOrder * yearly) / holding)
}

/** Yearly cost of ordering and holding when so many pieces are ordered each time. */
export function costOfQuantity({ perOrder, holding, yearly }: OrderCosts, quantity: number): number {
  return (perOrder * yearly) / quantity + (holding * quantity) / 2
}

/** A price for one piece when at least `from` pieces are ordered; it holds for all of them. */
export interface PriceBreak {
  readonly from: number
  readonly price: number
}

/**
 * The quantity of least yearly cost, the purchase counted, under all-units price breaks: for each price the economic
 * quantity, raised to where the price begins; a quantity beyond the next break is never the best of its price.
 */
export function quantityUnderBreaks(
  {
    perOrder,
    holdingRate,
    yearly,
  }: { readonly perOrder: number; readonly holdingRate: number; readonly yearly: number },
  breaks: readonly PriceBreak[],
): { readonly quantity: number; readonly cost: number } {
  const options = breaks.map(({ from, price }) => {
    const costs = { perOrder, holding: holdingRate * price, yearly }
    const quantity = Math.max(from, economicQuantity(costs))
    return { quantity, cost: yearly * price + costOfQuantity(costs, quantity), price }
  })
  // A quantity raised past the next break would be had at a lower price, so that the next option is no dearer.
  const [first, ...others] = options
  if (first === undefined) throw new Error('there is at least one price')
  const best = others.reduce((least, option) => (option.cost < least.cost ? option : least), first)
  return { quantity: best.quantity, cost: best.cost }
}

/** What must be ordered so that `need` is covered: in packs, and at least the minimum; nothing when nothing is needed. */
export function roundToPacks(
  need: number,
  { minimum, pack }: { readonly minimum: number; readonly pack: number },
): number {
  return need <= 0 ? 0 : Math.ceil(Math.max(need, minimum) / pack) * pack
}

/** The economic quantity in whole packs: the cost is convex, so it is the pack multiple below or above. */
export function economicPacks(costs: OrderCosts, pack: number): number {
  const below = Math.max(1, Math.floor(economicQuantity(costs) / pack)) * pack
  return costOfQuantity(costs, below) <= costOfQuantity(costs, below + pack) ? below : below + pack
}

/** What a review orders that has fallen to `reorderPoint` or below: the fewest whole lots that bring it above (R,s,nQ). */
export function lotsToOrder(
  position: number,
  { reorderPoint, lot }: { readonly reorderPoint: number; readonly lot: number },
): number {
  return position > reorderPoint ? 0 : (Math.floor((reorderPoint - position) / lot) + 1) * lot
}
