import type { SideBySide } from '../../shared-schemas/fit-check.ts'
import { compareAttribute } from './compare-attributes.ts'
import type { FitDecision } from './decide-fit.ts'
import type { ModelFacts, PartDossier } from './part-dossier.ts'
import { plateAttributes, type Readings, readStated } from './suppose-appliances.ts'

/** What a decision was about. */
export interface Asked {
  readonly dossier: PartDossier
  readonly models: readonly ModelFacts[]
  readonly readings: Readings
}

/** Each attribute that the current part states beside what the open models have; none where nothing was said of either. */
export function compareSideBySide(
  { dossier, models, readings }: Asked,
  { current, answers }: FitDecision,
): SideBySide[] {
  const part = current === null ? undefined : dossier.parts.get(current)
  const family = part && dossier.families.get(part.familyId)
  const isNothingSaid = answers.every(({ because }) => because === 'nothing-said')
  if (part === undefined || family === undefined || isNothingSaid) return []
  return family.attributes.flatMap(rule => {
    const { attribute } = rule
    const offered = part.attributes.get(attribute)
    if (offered === undefined) return []
    const plate = plateAttributes.get(attribute)
    const isRead = readings.stated.has(plate ?? attribute)
    const read = plate === undefined ? 'measured' : 'plate'
    const stated = new Set(models.map(readStated(attribute, dossier, readings)))
    return [...stated].slice(0, mostShown).map(
      (appliance): SideBySide => ({
        attribute,
        unit: rule.unit === 'text' ? '' : rule.unit,
        part: offered,
        appliance: appliance ?? null,
        from: appliance === undefined ? null : isRead ? read : 'catalogue',
        agreement: compareAttribute(rule, { part: offered, appliance }),
      }),
    )
  })
}

/** Of models that differ in an attribute, so many of its values. */
const mostShown = 4
