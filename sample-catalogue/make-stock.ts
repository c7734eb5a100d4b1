import type { SparseRow } from './catalogue-rows.ts'
import type { SampleFamily } from './make-families.ts'
import { vans } from './make-jobs.ts'
import type { SamplePart } from './make-parts.ts'
import { hashText, seededRandom } from './seeded-random.ts'

export const locations: readonly SparseRow<'locations.csv'>[] = [
  { location: 'shop', kind: 'shop', name: 'Sallowbridge Spares, Weir Lane' },
  { location: 'van-1', kind: 'van', name: 'Van 1, Otter' },
  { location: 'van-2', kind: 'van', name: 'Van 2, Heron' },
  { location: 'van-3', kind: 'van', name: 'Van 3, Teal' },
  { location: 'quarantine', kind: 'quarantine', name: 'Quarantine shelf' },
]

export type SampleStock = {
  readonly vanLists: readonly SparseRow<'van_lists.csv'>[]
  readonly openingStock: readonly SparseRow<'opening_stock.csv'>[]
}

/** What lies where on the first morning, and what each van should carry. Drawn from what was used in two years. */
export function makeStock(
  parts: readonly SamplePart[],
  families: readonly SampleFamily[],
  usage: readonly SparseRow<'usage.csv'>[],
): SampleStock {
  const used = sumUsage(usage)
  const supplied = parts.filter(part => part.replacedBy === '')
  const vanLists = vans.flatMap(van => makeVanList(van, families, supplied, used))
  return {
    vanLists,
    openingStock: [
      ...stockShop(supplied, used),
      ...vans.flatMap(van => stockVan(van, vanLists, supplied, used)),
      ...stockQuarantine(supplied, used),
    ],
  }
}

type Used = ReadonlyMap<string, number>

function sumUsage(usage: readonly SparseRow<'usage.csv'>[]): Used {
  const used = new Map<string, number>()
  for (const row of usage) {
    const number = row.part_number ?? ''
    used.set(number, (used.get(number) ?? 0) + Number(row.quantity))
  }
  return used
}

/** Families that vans used most, by family where any part of it will do, by part where the shop has a favourite. */
function makeVanList(
  van: string,
  families: readonly SampleFamily[],
  parts: readonly SamplePart[],
  used: Used,
): SparseRow<'van_lists.csv'>[] {
  const usedByFamily = new Map<string, number>()
  for (const part of parts) {
    usedByFamily.set(part.family, (usedByFamily.get(part.family) ?? 0) + (used.get(part.partNumber) ?? 0))
  }
  const ranked = families
    .filter(family => family.kind.price[1] < 110)
    .toSorted((one, other) => (usedByFamily.get(other.code) ?? 0) - (usedByFamily.get(one.code) ?? 0))
    .slice(0, 58)
    .filter(family => hashText(`${van} ${family.code}`) % 10 < 8)
  return ranked.map((family, rank) => {
    const level = String((rank < 8 ? 3 : rank < 24 ? 2 : 1) * Math.min(family.kind.quantity ?? 1, 4))
    const favourite = parts
      .filter(part => part.family === family.code)
      .toSorted((one, other) => (used.get(other.partNumber) ?? 0) - (used.get(one.partNumber) ?? 0))[0]
    const byPart = favourite !== undefined && hashText(`listed by part ${family.code}`) % 4 !== 0
    return byPart ? { van, part_number: favourite.partNumber, level } : { van, family: family.code, level }
  })
}

function stockShop(parts: readonly SamplePart[], used: Used): SparseRow<'opening_stock.csv'>[] {
  return parts.flatMap(part => {
    const weekly = (used.get(part.partNumber) ?? 0) / 104
    const random = seededRandom(`shop stock ${part.partNumber}`)
    const quantity =
      weekly === 0 ? (random.chance(0.18) ? 1 : 0) : Math.round(weekly * random.between(0, 7) + random.next())
    return quantity === 0 ? [] : [stockRow('shop', part, quantity, shopBin(part))]
  })
}

/** Bay and shelf by family, so that like lies with like. */
function shopBin(part: SamplePart): string {
  const place = hashText(`bin ${part.family}`)
  return `${'ABCDEFGH'.charAt(place % 8)}${1 + (Math.floor(place / 8) % 6)}-${String(1 + (hashText(part.partNumber) % 24)).padStart(2, '0')}`
}

/** Vans carry about what their list says: some lines are short, as on any Friday. */
function stockVan(
  van: string,
  vanLists: readonly SparseRow<'van_lists.csv'>[],
  parts: readonly SamplePart[],
  used: Used,
): SparseRow<'opening_stock.csv'>[] {
  return vanLists
    .filter(line => line.van === van)
    .flatMap((line, index) => {
      const part = parts
        .filter(one => one.partNumber === line.part_number || one.family === line.family)
        .toSorted((one, other) => (used.get(other.partNumber) ?? 0) - (used.get(one.partNumber) ?? 0))[0]
      const short = hashText(`short ${van} ${index}`) % 5 === 0 ? 1 : 0
      const quantity = Number(line.level) - short
      return part === undefined || quantity <= 0
        ? []
        : [stockRow(van, part, quantity, `${1 + (index % 4)}${'ABC'.charAt(index % 3)}`)]
    })
}

function stockQuarantine(parts: readonly SamplePart[], used: Used): SparseRow<'opening_stock.csv'>[] {
  return parts
    .filter(
      part => (used.get(part.partNumber) ?? 0) > 0 && hashText(`returned ${part.partNumber}`) % 60 === 0,
    )
    .map(part => stockRow('quarantine', part, 1, 'Q1'))
}

function stockRow(
  location: string,
  part: SamplePart,
  quantity: number,
  bin: string,
): SparseRow<'opening_stock.csv'> {
  return { location, part_number: part.partNumber, quantity: String(quantity), bin }
}
