import type { Verdict } from '../../shared-schemas/fit-check.ts'
import type { PartId, PartNumber } from '../../shared-schemas/identifiers.ts'
import { decideFit } from '../fit-check/decide-fit.ts'
import { followToCurrent, twinsOf } from '../fit-check/follow-supersessions.ts'
import type { JudgedPart } from '../fit-check/judge-many.ts'
import { anyDay, covers, type DaySpan } from '../fit-check/made-dates.ts'
import type { PartDossier } from '../fit-check/part-dossier.ts'
import { gatherTogether, needsOfReplacing, withoutContents } from '../fit-check/replace-together.ts'

/** What is supplied today for the number on a line, and what must be bought besides because it replaces another. */
export interface CurrentNumber {
  readonly partId: PartId
  readonly chain: readonly PartId[]
  readonly alsoNeeds: readonly PartNumber[]
}

/** For the line's appliance where the fit check knows; else as it holds for every appliance, whenever made. */
export function findCurrentNumber(dossier: PartDossier, judged: JudgedPart | undefined): CurrentNumber {
  const { asked, replacements } = dossier
  if (replacements.length === 0) return { partId: asked.partId, chain: [asked.partId], alsoNeeds: [] }
  if (judged === undefined || judged.decision.current === null) {
    const followed = followToCurrent(asked.partId, replacements, anyDay)
    return { ...followed, alsoNeeds: withoutContents(dossier, followed.partId, followed.alsoNeeds) }
  }
  const { current, chain, alsoNeeds, answers } = judged.decision
  return { partId: current, chain, alsoNeeds: needsOfReplacing(alsoNeeds, gatherTogether(answers)) }
}

/** Replacements that hold only for appliances made within a span, so that a stock line cannot say whether they do. */
export function listDatedReplacements(
  { replacements }: PartDossier,
  from: PartId,
): readonly { readonly new: PartId; readonly made: DaySpan }[] {
  const twins = twinsOf(
    from,
    replacements.filter(({ made }) => covers(made, anyDay)),
  )
  return replacements.filter(
    ({ way, old, made }) => way === 'one' && twins.includes(old) && !covers(made, anyDay),
  )
}

/** Whether the verdict's yes is for a newer number only: the one as written, should it still come, is not proved to go in. */
export function isProvedOnlyNewer({ dossier, models, readings, decision }: JudgedPart): boolean {
  if (!isYes(decision.verdict) || decision.current === dossier.asked.partId) return false
  const twins = twinsOf(dossier.asked.partId, dossier.replacements)
  const replacements = dossier.replacements.filter(({ way, old }) => way === 'both' || !twins.includes(old))
  return decideFit({ ...dossier, replacements }, models, readings).verdict !== 'fits'
}

export function isYes(verdict: Verdict): boolean {
  return verdict === 'fits' || verdict === 'fits-with-changes'
}
