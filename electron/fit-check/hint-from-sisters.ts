import type { Hint } from '../../shared-schemas/fit-check.ts'
import type { ModelFacts, PartDossier } from './part-dossier.ts'
import { type Readings, supposeAppliances } from './suppose-appliances.ts'

/**
 * How many of the other models of the platform take the part whatever their plates read. Shown beside a verdict and
 * never weighed in it. Of a safety device there is none: there likeness is no argument. Given are those of which the
 * dossier says anything; of the rest of `all` it says nothing, so they do not take it.
 */
export function hintFromSisters(dossier: PartDossier, sisters: readonly ModelFacts[], all: number): Hint[] {
  if ([...dossier.families.values()].some(({ safetyDevice }) => safetyDevice)) return []
  const models = countTakers(dossier, sisters)
  return models === 0 ? [] : [{ text: wordHint(models, all), models, of: all }]
}

function countTakers(dossier: PartDossier, sisters: readonly ModelFacts[]): number {
  const taking = supposeAppliances(dossier, sisters, nothingRead).filter(({ possibilities }) =>
    possibilities.every(({ answer }) => answer.outcome === 'yes'),
  )
  return taking.reduce((count, { models }) => count + models.length, 0)
}

const nothingRead: Readings = { made: null, serial: null, stated: new Map() }

function wordHint(models: number, of: number): string {
  const which = of === 1 ? 'The one other model' : `${models} of ${of} other models`
  return `${which} on the same platform ${models === 1 ? 'takes' : 'take'} it. This is a hint, not a listing.`
}
