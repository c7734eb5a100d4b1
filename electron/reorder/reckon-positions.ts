/** Where the pieces of a part are, and who has a claim on them. */
export interface PartPosition {
  readonly onShelf: number
  readonly inVans: number
  /** What the vans' lists name of the part, and what the vans lack of it. */
  readonly vanLevel: number
  readonly vanShort: number
  /** In vans, and on no list of theirs. */
  readonly vanSpare: number
  readonly reserved: number
  readonly onOrder: number
  /**
   * What the levels are compared with: on the shelf and spare in vans, and on order, less what is kept for others and what
   * the vans lack. A van's list is demand on the shop: what it carries by its list is not the shop's to give.
   */
  readonly position: number
}

export interface PositionFacts {
  readonly stock: readonly { readonly partId: number; readonly location: string; readonly quantity: number }[]
  readonly locations: readonly {
    readonly locationId: number
    readonly location: string
    readonly kind: string
  }[]
  readonly vanLevels: readonly {
    readonly locationId: number
    readonly partId: number | null
    readonly familyId: number | null
    readonly level: number
  }[]
  readonly familyOf: (partId: number) => number | undefined
  readonly reserved: ReadonlyMap<number, number>
  readonly onOrder: ReadonlyMap<number, number>
  /** The number that a part's stock counts for today. */
  readonly countsFor: (partId: number) => number
}

/** The position of each part that is somewhere, listed, kept or on order. What stands in quarantine is nobody's to use. */
export function reckonPositions(facts: PositionFacts): ReadonlyMap<number, PartPosition> {
  const found = new Map<number, Mutable>()
  const of = (partId: number): Mutable => {
    const part = facts.countsFor(partId)
    const position = found.get(part) ?? { ...nothing }
    found.set(part, position)
    return position
  }
  addPlaces(facts, of)
  for (const [partId, pieces] of facts.reserved) of(partId).reserved += pieces
  for (const [partId, pieces] of facts.onOrder) of(partId).onOrder += pieces
  return new Map(
    [...found].map(([partId, { onShelf, vanSpare, vanShort, reserved, onOrder, ...rest }]) => [
      partId,
      {
        ...{ ...rest, onShelf, vanSpare, vanShort, reserved, onOrder },
        position: onShelf + vanSpare + onOrder - reserved - vanShort,
      },
    ]),
  )
}

type Mutable = { -readonly [Key in keyof Omit<PartPosition, 'position'>]: number }

const nothing = { onShelf: 0, inVans: 0, vanLevel: 0, vanShort: 0, vanSpare: 0, reserved: 0, onOrder: 0 }

/** Of a part that is nowhere and that nobody waits for. */
export const noPosition: PartPosition = { ...nothing, position: 0 }

function addPlaces(facts: PositionFacts, of: (partId: number) => Mutable): void {
  const { stock, locations, vanLevels, familyOf, countsFor } = facts
  const placeOf = new Map(locations.map(place => [place.location, place]))
  /** By van and part that counts: what the list says, and what is there. */
  const vans = new Map<string, { readonly partId: number; level: number; there: number; byFamily: boolean }>()
  const inVan = (locationId: number, partId: number) => {
    const key = `${locationId} ${countsFor(partId)}`
    const line = vans.get(key) ?? { partId, level: 0, there: 0, byFamily: false }
    vans.set(key, line)
    return line
  }
  const families = new Set(vanLevels.map(({ locationId, familyId }) => `${locationId} ${familyId}`))
  for (const { locationId, partId, level } of vanLevels)
    if (partId !== null) inVan(locationId, partId).level += level
  for (const { partId, location, quantity } of stock) {
    const place = placeOf.get(location)
    if (place?.kind === 'shop') of(partId).onShelf += quantity
    if (place?.kind !== 'van') continue
    const line = inVan(place.locationId, partId)
    line.there += quantity
    line.byFamily ||= families.has(`${place.locationId} ${familyOf(partId)}`)
  }
  for (const { partId, level, there, byFamily } of vans.values()) {
    const position = of(partId)
    position.inVans += there
    position.vanLevel += level
    position.vanShort += Math.max(0, level - there)
    // Where the list names the family, any of its parts may be what it asks for.
    if (!byFamily) position.vanSpare += Math.max(0, there - level)
  }
}
