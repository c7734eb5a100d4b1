import type { FamilyKind } from './family-kinds/family-kind.ts'
import type { SampleFamily } from './make-families.ts'
import type { SampleModel } from './make-models.ts'
import { monthCount } from './months.ts'
import { hashText, itemAt } from './seeded-random.ts'

/** What a model takes of one kind: one form, or two parted by a month or by a serial number. */
export type ChosenForms =
  | { readonly parted: 'not'; readonly family: SampleFamily }
  | {
      readonly parted: 'by-month'
      readonly early: SampleFamily
      readonly late: SampleFamily
      /** First month of the late form, counted. */
      readonly from: number
    }
  | {
      readonly parted: 'by-serial'
      readonly early: SampleFamily
      readonly late: SampleFamily
      readonly lastEarly: string
      readonly firstLate: string
    }

/** Which form of a kind goes into a model. Platforms decide, so brands that share one share its parts. */
export function chooseForms(
  model: SampleModel,
  kind: FamilyKind,
  forms: readonly SampleFamily[],
): ChosenForms | undefined {
  if (kind.boughtAlong === true || !kind.types.includes(model.type) || !isOfFuel(model, kind))
    return undefined
  const subject = `${kind.kind} ${model.platform}`
  if (kind.onEveryPlatform !== true && hashText(`has ${subject}`) % 100 < 14) return undefined
  // Kinds of one fuel meet every other platform only.
  const step = kind.fuel === undefined ? platformNumber(model) : Math.ceil(platformNumber(model) / 2)
  const place = step + (hashText(kind.kind) % 7)
  const early = itemAt(forms, place)
  const late = itemAt(forms, place + 1)
  if (early === late) return { parted: 'not', family: early }
  if (changedWithVariant(model, kind)) return { parted: 'not', family: late }
  if (isPartedBySerial(model, kind)) {
    return { parted: 'by-serial', early, late, lastEarly: '44999999', firstLate: '45000000' }
  }
  if (hashText(`change ${subject}`) % 10 >= 3) return { parted: 'not', family: early }
  return partByMonth(model, {
    early,
    late,
    from: monthCount('2008-01') + (hashText(`month ${subject}`) % 150),
  })
}

/** Hobs of even platforms burn gas; the others are wired in. */
function isOfFuel(model: SampleModel, kind: FamilyKind): boolean {
  if (kind.fuel === undefined) return true
  return kind.fuel === (platformNumber(model) % 2 === 0 ? 'gas' : 'electric')
}

function platformNumber(model: SampleModel): number {
  return Number(model.platform.slice(model.platform.lastIndexOf('-') + 1))
}

function changedWithVariant(model: SampleModel, kind: FamilyKind): boolean {
  const draw = hashText(`variant ${kind.kind} ${model.line}`)
  return draw % 100 < 7 && model.variant >= 2 + (draw % 3)
}

/** Makers that print no date on the plate but a running number of eight figures. */
export const runningSerialBrands: readonly string[] = ['Kessolm', 'Pirrell']

function isPartedBySerial(model: SampleModel, kind: FamilyKind): boolean {
  return runningSerialBrands.includes(model.brand) && hashText(`serial ${kind.kind} ${model.line}`) % 100 < 5
}

function partByMonth(
  model: SampleModel,
  change: { readonly early: SampleFamily; readonly late: SampleFamily; readonly from: number },
): ChosenForms {
  if (monthCount(model.madeFrom) >= change.from) return { parted: 'not', family: change.late }
  if (model.madeTo !== '' && monthCount(model.madeTo) < change.from) {
    return { parted: 'not', family: change.early }
  }
  return { parted: 'by-month', ...change }
}
