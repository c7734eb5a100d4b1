import type { SparseRow } from './catalogue-rows.ts'
import type { SampleFamily } from './make-families.ts'
import { firstDay, lastDay } from './make-jobs.ts'
import type { SamplePart } from './make-parts.ts'
import { dayAfter } from './months.ts'
import { hashText, type SeededRandom, seededRandom } from './seeded-random.ts'

/** How a part sells over the counter, in the classes of the inventory literature. */
type SellingPattern = 'smooth' | 'erratic' | 'intermittent' | 'lumpy' | 'slow' | 'never'

/** Sales over the counter, week by week, without a job. The dryer belts follow the season. */
export function makeCounterSales(
  parts: readonly SamplePart[],
  families: readonly SampleFamily[],
): SparseRow<'usage.csv'>[] {
  const wear = new Map(families.map(family => [family.code, family.kind.wear]))
  return parts
    .filter(part => part.replacedBy === '')
    .flatMap(part => sellPart(part, choosePattern(part, wear.get(part.family) ?? 1)))
}

function choosePattern(part: SamplePart, wear: number): SellingPattern {
  const draw = (hashText(`sells ${part.partNumber}`) % 1000) / wear
  if (draw < 14) return 'smooth'
  if (draw < 26) return 'erratic'
  if (draw < 150) return 'intermittent'
  if (draw < 210) return 'lumpy'
  return draw < 480 ? 'slow' : 'never'
}

function sellPart(part: SamplePart, pattern: SellingPattern): SparseRow<'usage.csv'>[] {
  const random = seededRandom(`counter ${part.partNumber}`)
  const rows: SparseRow<'usage.csv'>[] = []
  for (let monday = firstDay; monday <= lastDay; monday = dayAfter(monday, 7)) {
    const quantity = sellWeek(pattern, random)
    const date = dayAfter(monday, random.between(0, 5))
    if (quantity === 0 || !isInSeason(part, date, random)) continue
    rows.push({ date, location: 'shop', part_number: part.partNumber, quantity: String(quantity), job: '' })
  }
  return rows
}

function sellWeek(pattern: SellingPattern, random: SeededRandom): number {
  switch (pattern) {
    case 'smooth':
      return random.between(3, 6)
    case 'erratic':
      return random.chance(0.9) ? Math.ceil(random.next() ** 3 * 18) : 0
    case 'intermittent':
      return random.chance(0.22) ? random.between(1, 2) : 0
    case 'lumpy':
      return random.chance(0.12) ? Math.ceil(random.next() ** 3 * 24) : 0
    case 'slow':
      return random.chance(0.02) ? 1 : 0
    case 'never':
      return 0
  }
}

function isInSeason(part: SamplePart, date: string, random: SeededRandom): boolean {
  if (!part.family.startsWith('dryer-belt')) return true
  const month = Number(date.slice(5, 7))
  return random.chance(month <= 2 || month >= 11 ? 1 : month >= 5 && month <= 8 ? 0.1 : 0.4)
}
