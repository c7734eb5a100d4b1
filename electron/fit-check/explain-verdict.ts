import type { CheckedCondition, Why } from '../../shared-schemas/fit-check.ts'
import type { PartId } from '../../shared-schemas/identifiers.ts'
import { type Asked, compareSideBySide } from './compare-side-by-side.ts'
import type { FitDecision } from './decide-fit.ts'
import { anyDay, covers, type DaySpan, daysInBoth, wordDays } from './made-dates.ts'
import type { PartDossier, Statement } from './part-dossier.ts'
import { gatherTogether } from './replace-together.ts'
import { ruleOutModels } from './rule-out-models.ts'
import { isInSerialRange } from './serial-ranges.ts'
import { daysOfModel, wordSerialRange } from './suppose-appliances.ts'

/**
 * The chain behind a verdict: what replaces the number typed, what is said and by whom, each condition with the
 * reading that it was held against, the attributes side by side, and what goes in together. It retells a decision and makes none.
 */
export function explainVerdict(asked: Asked, decision: FitDecision): Why {
  return {
    replaced: explainReplacements(asked.dossier, decision),
    statements: explainStatements(asked, decision),
    attributes: compareSideBySide(asked, decision),
    ...explainCompany(asked.dossier, decision),
  }
}

/** What goes in together with the part; and for a yes what comes in it, and the kits that it comes in. */
function explainCompany(
  { contents, kitsWith }: PartDossier,
  { current, answers, verdict }: FitDecision,
): Pick<Why, 'together' | 'contents' | 'kits'> {
  const together = gatherTogether(answers).map(({ partNumber, quantity, from, why }) => ({
    part: partNumber,
    quantity,
    from,
    why,
  }))
  if (current === null || (verdict !== 'fits' && verdict !== 'fits-with-changes'))
    return { together, contents: [], kits: [] }
  const inside = contents.get(current) ?? []
  return {
    together,
    contents: inside.map(({ partNumber, quantity }) => ({ part: partNumber, quantity })),
    kits: (kitsWith.get(current) ?? []).map(({ partNumber }) => partNumber),
  }
}

function explainReplacements(
  { parts, replacements }: PartDossier,
  { chain, current }: FitDecision,
): Why['replaced'] {
  if (current === null) return []
  return chain.slice(1).map((by, at) => ({
    by: parts.get(by)?.partNumber ?? '',
    alsoNeeds: needsOfStep(replacements, chain[at], by),
  }))
}

function needsOfStep(
  replacements: PartDossier['replacements'],
  from: PartId | undefined,
  by: PartId,
): string[] {
  const step = replacements.find(({ old, new: replacement }) => old === from && replacement === by)
  return [...(step?.alsoNeeds ?? [])]
}

/** Each statement that was weighed, once, with of how many of the open models it is said; those of most models first. */
function explainStatements(asked: Asked, { answers }: FitDecision): Why['statements'] {
  const { dossier, readings } = asked
  const open = ruleOutModels(dossier, asked.models, readings)
  const weighed = new Map(answers.flatMap(({ statements }) => statements.map(said => [said.termsId, said])))
  return [...weighed.values()]
    .map(statement => ({
      says: statement.says,
      subject: nameSubject(dossier, statement),
      position: statement.position,
      source: statement.source,
      models: open.filter(({ termsIds }) => termsIds.has(statement.termsId)).length,
      conditions: [...checkMade(asked, statement), ...checkSerial(asked, statement)],
    }))
    .sort((one, other) => other.models - one.models)
    .slice(0, mostStatements)
}

/** More would not be read. */
const mostStatements = 8

function nameSubject({ parts, families }: PartDossier, { partId, familyId }: Statement): string {
  if (partId !== null) return parts.get(partId)?.partNumber ?? ''
  return familyId === null ? '' : (families.get(familyId)?.name ?? '')
}

function checkMade(asked: Asked, { made }: Statement): CheckedCondition[] {
  if (made.first === anyDay.first && made.last === anyDay.last) return []
  const { days, from } = readMade(asked)
  const all = days.every(span => covers(made, span))
  const none = days.every(span => daysInBoth(made, span) === undefined)
  return [
    {
      reading: 'made',
      wants: wordDays(made),
      read: from === null ? null : days.map(wordDays).join(' or '),
      from,
      holds: all ? true : none ? false : null,
    },
  ]
}

interface MadeReading {
  readonly days: readonly DaySpan[]
  readonly from: CheckedCondition['from']
}

/** When the appliance may have been made, and what says so last: the plate, its serial's date code, or the catalogue. */
function readMade({ models, readings: { made } }: Asked): MadeReading {
  const [model, ...others] = models
  if (model === undefined || others.length > 0)
    return made === null ? { days: [anyDay], from: null } : { days: [made], from: 'plate' }
  const days = daysOfModel(model, made)
  if (made !== null) return { days, from: 'plate' }
  if (model.madeBySerial.length > 0) return { days, from: 'date-code' }
  const isDated = Number.isFinite(model.made.first) || Number.isFinite(model.made.last)
  return { days, from: isDated ? 'catalogue' : null }
}

function checkSerial({ readings }: Asked, { serial }: Statement): CheckedCondition[] {
  if (serial === null) return []
  const read = readings.serial
  return [
    {
      reading: 'serial',
      wants: wordSerialRange(serial),
      read,
      from: read === null ? null : 'plate',
      holds: read === null ? null : (isInSerialRange(read, serial) ?? null),
    },
  ]
}
