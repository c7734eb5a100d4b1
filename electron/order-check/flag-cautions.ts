import type { Caution } from '../../shared-schemas/fit-check.ts'
import type { OrderFlag } from '../../shared-schemas/order-check.ts'
import { cautionsOfReading } from '../fit-check/caution-reading.ts'
import { cautionsOfFamily } from '../fit-check/hazard-cautions.ts'
import type { JudgedPart } from '../fit-check/judge-many.ts'
import { cautionReturns, partsOfDecision } from '../fit-check/note-records.ts'
import { flagNamed } from './flag-table.ts'
import type { LineFacts } from './line-facts.ts'

/** What the fit check would say to mind: of wrong-fit returns, of the plate as read, and of work with parts of this family. */
export function flagCautions({ dossier, judged, current, records }: LineFacts): OrderFlag[] {
  if (dossier === undefined || current === undefined) return []
  const supplied = dossier.parts.get(current.partId) ?? dossier.asked
  const family = dossier.families.get(supplied.familyId)
  const ofReading = judged === undefined ? [] : cautionsOfReading(judged.open, judged.models, judged.readings)
  const ofReturns = judged === undefined ? [] : returnsOf(judged, records)
  const ofFamily = family === undefined ? [] : cautionsOfFamily(family)
  return [...ofReturns, ...ofReading, ...ofFamily].map(({ code, text }) => flagNamed(code, text))
}

function returnsOf({ partId, models, decision }: JudgedPart, records: LineFacts['records']): Caution[] {
  if (records.length === 0) return []
  return cautionReturns(decision.verdict, {
    records,
    modelIds: new Set(models.map(({ modelId }) => modelId)),
    partIds: partsOfDecision(partId, decision),
  })
}
