import type { Hint } from '../../shared-schemas/fit-check.ts'
import type { ModelFacts, PartDossier } from './part-dossier.ts'
import { type Readings, supposeAppliances } from './suppose-appliances.ts'

/**
 * How many of the other models of the platform take the part whatever their plates read. Shown beside a verdict and
 * never weighed in it. Of a safety device there is none: there likeness is no argument.
 */
export function hintFromSisters(dossier: PartDossier, models: number, all: number): Hint[] {
  if (isSafetyDevice(dossier) || models === 0) return []
  return [{ text: wordHint(models, all), models, of: all }]
}

export function isSafetyDevice({ families }: PartDossier): boolean {
  return [...families.values()].some(({ safetyDevice }) => safetyDevice)
}

/** Those that take the part whatever their plates read. Of a model of which the dossier says nothing that is never so. */
export function listTakers(dossier: PartDossier, models: readonly ModelFacts[]): ModelFacts[] {
  const taking = supposeAppliances(dossier, models, nothingRead).filter(({ possibilities }) =>
    possibilities.every(({ answer }) => answer.outcome === 'yes'),
  )
  return taking.flatMap(alike => alike.models)
}

const nothingRead: Readings = { made: null, serial: null, stated: new Map() }

function wordHint(models: number, of: number): string {
  const which = of === 1 ? 'The one other model' : `${models} of ${of} other models`
  return `${which} on the same platform ${models === 1 ? 'takes' : 'take'} it. This is a hint, not a listing.`
}
