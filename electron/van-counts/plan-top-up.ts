/** One line of what a van should carry: so many of one part, or of any part of a family. */
export interface ListedLevel {
  readonly familyId: number | null
  readonly partId: number | null
  /** What people call it. */
  readonly name: string
  readonly level: number
}

export interface TopUpPart {
  readonly partId: number
  readonly partNumber: string
  readonly familyId: number
  readonly kind: 'genuine' | 'pattern'
}

export interface Stocked {
  readonly partId: number
  /** What nobody waits for. */
  readonly free: number
}

export interface ShopStock extends Stocked {
  readonly location: string
  readonly bin: string | null
}

export interface TopUpFacts {
  readonly list: readonly ListedLevel[]
  readonly parts: ReadonlyMap<number, TopUpPart>
  readonly inVan: readonly Stocked[]
  readonly inShop: readonly ShopStock[]
  /** By part, the parts that may always stand for it, its newest number first. */
  readonly standIns: ReadonlyMap<number, readonly number[]>
  readonly prefer: 'genuine' | 'pattern'
}

export interface TopUpPlan {
  readonly lines: readonly {
    readonly partNumber: string
    readonly quantity: number
    readonly from: string
    readonly bin: string | null
    readonly wanted: string
    readonly instead: boolean
  }[]
  readonly shortages: readonly Shortage[]
  readonly leftovers: readonly Leftover[]
}

/** What the shop cannot give of a line. */
export interface Shortage {
  readonly line: ListedLevel
  readonly has: number
  readonly missing: number
}

/** What is in the van beyond its list. */
export interface Leftover {
  readonly partId: number
  readonly partNumber: string
  readonly quantity: number
}

/**
 * What brings a van back to its list. What is in the van answers the lines that name a part first, since only that part
 * will do; then those that name a family. The shop gives likewise: the very part, else what may always stand for it; of
 * a family, the kind that the shop prefers, and within a kind the part of which it has most. A piece counts once.
 */
export function planTopUp(facts: TopUpFacts): TopUpPlan {
  const van = new Map(facts.inVan.map(({ partId, free }) => [partId, free]))
  const shop = facts.inShop.map(stock => ({ ...stock }))
  const lines: TopUpPlan['lines'][number][] = []
  const shortages: TopUpPlan['shortages'][number][] = []
  const needs = partsBeforeFamilies(facts.list).map(line => {
    const has = takeFrom(van, candidates(line, facts), line.level)
    return { line, has, missing: line.level - has }
  })
  for (const { line, has, missing } of needs) {
    let left = missing
    for (const stock of stockFor(line, shop, facts)) {
      const quantity = Math.min(left, stock.free)
      if (quantity <= 0) continue
      stock.free -= quantity
      left -= quantity
      const { location: from, bin, partId } = stock
      const instead = line.partId !== null && line.partId !== partId
      lines.push({ partNumber: numberOf(partId, facts), quantity, from, bin, wanted: line.name, instead })
    }
    if (left > 0) shortages.push({ line, has, missing: left })
  }
  const leftovers = [...van]
    .filter(([, pieces]) => pieces > 0)
    .map(([partId, quantity]) => ({ partId, partNumber: numberOf(partId, facts), quantity }))
  return { lines, shortages, leftovers }
}

function partsBeforeFamilies(list: readonly ListedLevel[]): ListedLevel[] {
  return [...list.filter(({ partId }) => partId !== null), ...list.filter(({ partId }) => partId === null)]
}

/** The parts that answer a line, the best first. */
export function candidates(
  line: ListedLevel,
  { parts, standIns, prefer }: Pick<TopUpFacts, 'parts' | 'standIns' | 'prefer'>,
): number[] {
  if (line.partId !== null) return [line.partId, ...(standIns.get(line.partId) ?? [])]
  return [...parts.values()]
    .filter(({ familyId }) => familyId === line.familyId)
    .sort((one, other) => Number(other.kind === prefer) - Number(one.kind === prefer))
    .map(({ partId }) => partId)
}

/** Takes up to so many pieces of these parts out of what is there, and says how many that were. */
function takeFrom(there: Map<number, number>, partIds: readonly number[], wanted: number): number {
  let left = wanted
  for (const partId of partIds) {
    const taken = Math.min(left, Math.max(0, there.get(partId) ?? 0))
    if (taken === 0) continue
    there.set(partId, (there.get(partId) ?? 0) - taken)
    left -= taken
  }
  return wanted - left
}

/** A family's parts of one kind are taken from where there are most, so that few shelves are walked to. */
function stockFor<Stock extends ShopStock>(
  line: ListedLevel,
  shop: readonly Stock[],
  facts: TopUpFacts,
): Stock[] {
  const order = candidates(line, facts)
  const rankOf = ({ partId }: Stock) =>
    line.partId === null ? Number(facts.parts.get(partId)?.kind !== facts.prefer) : order.indexOf(partId)
  return shop
    .filter(({ partId, free }) => free > 0 && order.includes(partId))
    .sort((one, other) => rankOf(one) - rankOf(other) || other.free - one.free)
}

function numberOf(partId: number, { parts }: TopUpFacts): string {
  const part = parts.get(partId)
  if (part === undefined) throw new Error(`the facts of a top-up name every part, but not ${partId}`)
  return part.partNumber
}
