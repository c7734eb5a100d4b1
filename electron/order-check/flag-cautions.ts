import type { OrderFlag } from '../../shared-schemas/order-check.ts'
import { cautionsOfReading } from '../fit-check/caution-reading.ts'
import { cautionsOfFamily } from '../fit-check/hazard-cautions.ts'
import { findCurrentNumber } from './find-current-number.ts'
import { flagNamed } from './flag-table.ts'
import type { LineFacts } from './line-facts.ts'

/** What the fit check would say to mind: of the plate as read, and of work with parts of this family. */
export function flagCautions({ dossier, judged }: LineFacts): OrderFlag[] {
  if (dossier === undefined) return []
  const current = dossier.parts.get(findCurrentNumber(dossier, judged).partId) ?? dossier.asked
  const family = dossier.families.get(current.familyId)
  const ofReading = judged === undefined ? [] : cautionsOfReading(judged.open, judged.models, judged.readings)
  const ofFamily = family === undefined ? [] : cautionsOfFamily(family)
  return [...ofReading, ...ofFamily].map(({ code, text }) => flagNamed(code, text))
}
