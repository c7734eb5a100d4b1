import { planTopUp, type ShopStock, type TopUpFacts, type TopUpPlan } from './plan-top-up.ts'

/** A van with the facts of its top-up, but for what the shop has. */
export interface VanFacts extends Omit<TopUpFacts, 'inShop'> {
  readonly van: string
}

/**
 * The top-ups of all vans out of one shop: what one van is given, the next is not promised. Vans are served in the order
 * in which they are handed in.
 */
export function planAllTopUps(
  vans: readonly VanFacts[],
  inShop: readonly ShopStock[],
): { readonly van: string; readonly plan: TopUpPlan }[] {
  let left = inShop
  return vans.map(facts => {
    const plan = planTopUp({ ...facts, inShop: left })
    left = takeAway(left, plan, facts)
    return { van: facts.van, plan }
  })
}

function takeAway(
  stock: readonly ShopStock[],
  { lines }: TopUpPlan,
  { parts }: Pick<TopUpFacts, 'parts'>,
): ShopStock[] {
  return stock.map(one => {
    const partNumber = parts.get(one.partId)?.partNumber
    const given = lines
      .filter(line => line.partNumber === partNumber && line.from === one.location && line.bin === one.bin)
      .reduce((sum, { quantity }) => sum + quantity, 0)
    return { ...one, free: one.free - given }
  })
}
