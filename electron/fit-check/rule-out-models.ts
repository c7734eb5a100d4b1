import { readValue } from '../catalogue/measured-values.ts'
import { daysInBoth } from './made-dates.ts'
import { attributeKey, type ModelFacts, type PartDossier } from './part-dossier.ts'
import type { Readings } from './suppose-appliances.ts'

/**
 * The open models that no reading contradicts, one reading after the other. A reading that contradicts all that are
 * left rules none of them out: then the model number is what is doubtful, the reading counts, and a caution says so.
 */
export function ruleOutModels(
  { families }: PartDossier,
  models: readonly ModelFacts[],
  { made, stated }: Readings,
): readonly ModelFacts[] {
  const ofFamilies = [...families].flatMap(([familyId, { attributes }]) =>
    attributes.map(({ attribute, unit }) => {
      const key = attributeKey(familyId, attribute)
      return { read: stated.get(attribute), unit, listed: (model: ModelFacts) => model.stated.get(key) }
    }),
  )
  const ofPlate = plateUnits.map(([plate, unit]) => ({
    read: stated.get(plate),
    unit,
    listed: (model: ModelFacts) => model[plate],
  }))
  const contradictions: ((model: ModelFacts) => boolean)[] = [
    model => made !== null && daysInBoth(made, model.made) === undefined,
    ({ made, madeBySerial }) =>
      madeBySerial.length > 0 && madeBySerial.every(days => daysInBoth(days, made) === undefined),
    // What was not read contradicts nothing.
    ...[...ofPlate, ...ofFamilies].flatMap(({ read, unit, listed }) =>
      read === undefined ? [] : [(model: ModelFacts) => contradicts(read, listed(model), unit)],
    ),
  ]
  return contradictions.reduce((left, isContradicted) => {
    const agreeing = left.filter(model => !isContradicted(model))
    return agreeing.length > 0 ? agreeing : left
  }, models)
}

export const plateUnits = [
  ['volts', 'V'],
  ['hertz', 'Hz'],
  ['watts', 'W'],
] as const

/** True where both are stated and can be read, and no value would satisfy both: `230` does not contradict `220-240`. */
export function contradicts(
  read: string | undefined,
  listed: string | null | undefined,
  unit: string,
): boolean {
  const [one, other] = [readValue(read ?? '', unit), readValue(listed ?? '', unit)]
  if (one === undefined || other === undefined) return false
  if (one.kind === 'words' || other.kind === 'words') {
    return one.kind === 'words' && other.kind === 'words' && one.words !== other.words
  }
  return !one.alternatives.some(a => other.alternatives.some(b => a.low <= b.high && b.low <= a.high))
}
