import type { SparseRow } from './catalogue-rows.ts'
import type { SamplePart } from './make-parts.ts'
import { hashText, seededRandom } from './seeded-random.ts'

export const suppliers: readonly SparseRow<'suppliers.csv'>[] = [
  {
    supplier: 'TARROW',
    name: 'Tarrow Trade Spares',
    currency: 'GBP',
    minimum_order: '25.00',
    carriage: '5.95',
    carriage_paid_from: '120.00',
    lead_days: '2',
  },
  {
    supplier: 'BRACKWATER',
    name: 'Brackwater Components',
    currency: 'GBP',
    minimum_order: '40.00',
    carriage: '7.50',
    carriage_paid_from: '200.00',
    lead_days: '4',
  },
  {
    supplier: 'LINDLE',
    name: 'Lindle & Orme, makers’ agents',
    currency: 'GBP',
    minimum_order: '0.00',
    carriage: '9.80',
    carriage_paid_from: '350.00',
    lead_days: '9',
  },
  {
    supplier: 'VELDKADE',
    name: 'Veldkade Onderdelen',
    currency: 'EUR',
    minimum_order: '75.00',
    carriage: '14.00',
    carriage_paid_from: '300.00',
    lead_days: '12',
  },
]

/** What each supplier asks for each part that can still be had: one row a price step. */
export function makeOffers(parts: readonly SamplePart[]): SparseRow<'offers.csv'>[] {
  return parts
    .filter(part => part.replacedBy === '')
    .flatMap(part => chooseSuppliers(part).flatMap(supplier => makeOffer(part, supplier)))
}

function chooseSuppliers(part: SamplePart): string[] {
  const draw = hashText(`offers ${part.partNumber}`) % 100
  if (part.maker === 'Veldkade') return ['VELDKADE']
  if (part.kind === 'pattern')
    return draw < 40 ? ['TARROW', 'BRACKWATER'] : draw < 75 ? ['TARROW'] : ['BRACKWATER']
  if (draw < 30) return ['LINDLE']
  if (draw < 60) return ['LINDLE', 'TARROW']
  if (draw < 80) return ['BRACKWATER', 'VELDKADE']
  return draw < 97 ? ['LINDLE', 'TARROW', 'VELDKADE'] : []
}

const markUps: Readonly<Record<string, number>> = {
  TARROW: 1,
  BRACKWATER: 0.96,
  LINDLE: 1.07,
  VELDKADE: 1.05,
}

function makeOffer(part: SamplePart, supplier: string): SparseRow<'offers.csv'>[] {
  const random = seededRandom(`offer ${supplier} ${part.partNumber}`)
  const pence = Math.round(part.costPence * (markUps[supplier] ?? 1) * (0.95 + random.next() * 0.1))
  const pack = pence < 500 ? random.pick([1, 5, 10]) : pence < 1200 ? random.pick([1, 1, 2, 5]) : 1
  const minimum = random.chance(0.12) ? pack * 2 : pack
  const steps = random.chance(0.35) ? [1, 5, 20] : random.chance(0.4) ? [1, 10] : [1]
  const supplierCode = `${supplier.slice(0, 2)}${String(hashText(`code ${supplier} ${part.partNumber}`) % 100_000_000).padStart(8, '0')}`
  return steps.map((step, index) => ({
    supplier,
    part_number: part.partNumber,
    supplier_code: supplierCode,
    price: (Math.round(pence * (1 - index * 0.06)) / 100).toFixed(2),
    from_quantity: String(step === 1 ? minimum : Math.ceil(step / pack) * pack + minimum),
    pack: String(pack),
    minimum: String(minimum),
  }))
}
