import { type ApplianceType, applianceTypes, typeProfiles } from './appliance-types.ts'
import type { AwkwardCase } from './awkward/awkward-case.ts'
import { awkwardCases } from './awkward-cases.ts'
import { numberKey, type SparseRow } from './catalogue-rows.ts'
import { type InventedBrand, inventedBrands } from './invented-brands.ts'
import { monthCount, monthText } from './months.ts'
import { hashText, itemAt, type SeededRandom, seededRandom } from './seeded-random.ts'

export type SampleModel = {
  readonly brand: string
  readonly modelNumber: string
  readonly type: ApplianceType
  readonly platform: string
  readonly madeFrom: string
  readonly madeTo: string
  readonly volts: string
  readonly hertz: string
  readonly watts: string
  readonly salesName: string
  /** The basic number that this one is a variant of; sisters on a line mostly take the same parts. */
  readonly line: string
  readonly variant: number
}

/** Every model of the sample: the planted ones first, then each brand's lines with their variants. */
export function makeModels(): SampleModel[] {
  const planted = awkwardCases.flatMap(plantedModels)
  const taken = new Set(planted.map(modelKey))
  const made = inventedBrands.flatMap(invented =>
    invented.types.flatMap(type =>
      Array.from({ length: typeProfiles[type].lines }, (_, line) => makeLine(invented, type, line)).flat(),
    ),
  )
  const fresh = made.filter(model => {
    const isNew = !taken.has(modelKey(model))
    taken.add(modelKey(model))
    return isNew
  })
  return [...planted, ...fresh]
}

export function modelKey(model: { readonly brand: string; readonly modelNumber: string }): string {
  return `${model.brand}\t${numberKey(model.modelNumber)}`
}

function plantedModels(awkwardCase: AwkwardCase): SampleModel[] {
  const salesNames = new Map(
    awkwardCase.plants['sales_names.csv']?.map(row => [row.model_number, row.sales_name ?? '']),
  )
  return (awkwardCase.plants['models.csv'] ?? []).map((row, index) => ({
    brand: row.brand ?? '',
    modelNumber: row.model_number ?? '',
    type: knownType(row),
    platform: row.platform ?? '',
    madeFrom: row.made_from ?? '',
    madeTo: row.made_to ?? '',
    volts: row.volts ?? '',
    hertz: row.hertz ?? '',
    watts: row.watts ?? '',
    salesName: salesNames.get(row.model_number) ?? '',
    line: `planted ${awkwardCase.name}`,
    variant: index,
  }))
}

function knownType(row: SparseRow<'models.csv'>): ApplianceType {
  const type = applianceTypes.find(word => word === row.appliance_type)
  if (type === undefined) throw new Error(`${row.model_number} is of no known appliance type`)
  return type
}

function makeLine(invented: InventedBrand, type: ApplianceType, line: number): SampleModel[] {
  const name = `${invented.brand} ${type} ${line}`
  const random = seededRandom(name)
  const profile = typeProfiles[type]
  // A brand buys from two or three platforms of a type, and shares each with other brands.
  const platform = 1 + ((hashText(`${invented.brand} ${type}`) + random.between(0, 2)) % profile.platforms)
  const watts = random.pick(profile.watts)
  const built: SampleModel[] = []
  let madeFrom = monthCount('2003-01') + random.between(0, 210)
  const variants = random.between(5, 8)
  for (let variant = 0; variant < variants; variant += 1) {
    const runs = random.between(8, 26)
    built.push({
      brand: invented.brand,
      modelNumber: invented.modelNumber(type, line, variant),
      type,
      platform: `${type}-${platform}`,
      madeFrom: monthText(madeFrom),
      // What is still made, or was when the lists were printed, has no last month.
      madeTo: madeFrom + runs > monthCount('2025-06') ? '' : monthText(madeFrom + runs),
      ...makeSupply(random, type),
      watts: random.chance(0.05) ? '' : String(watts),
      salesName: invented.salesName(type, line),
      line: name,
      variant,
    })
    madeFrom += random.between(6, runs + 1)
  }
  return built.filter(model => monthCount(model.madeFrom) <= monthCount('2026-06'))
}

/** Mostly European supplies; now and then an import, now and then a plate nobody has read. */
function makeSupply(random: SeededRandom, type: ApplianceType): { volts: string; hertz: string } {
  if (random.chance(0.015)) return { volts: '120', hertz: '60' }
  if (random.chance(0.04)) return { volts: '', hertz: '' }
  const volts = itemAt(
    ['220-240', '220-240', '220-240', '230', '230', '220-230', '240'],
    random.between(0, 6),
  )
  // Machines without a motor that follows the supply are marked for either frequency.
  const hertz = type === 'vacuum' && random.chance(0.6) ? '50-60' : '50'
  return { volts, hertz }
}
