import type { Reason } from '../../shared-schemas/fit-check.ts'
import type { PartId } from '../../shared-schemas/identifiers.ts'
import { type Asked, compareSideBySide } from './compare-side-by-side.ts'
import type { FitDecision, MetAnswer } from './decide-fit.ts'
import type { KnownAnswer } from './decide-with-all-readings.ts'
import { anyDay, wordDays } from './made-dates.ts'
import type { FamilyFacts, ModelFacts, PartDossier, PartFacts, Statement } from './part-dossier.ts'
import { gatherTogether, needsOfReplacing } from './replace-together.ts'
import { daysOfModel, type Readings, wordSerialRange } from './suppose-appliances.ts'
import { wordTogether } from './word-together.ts'

/** The reasoning as a short chain: the number asked for, the current one, what is said and by whom, attributes side by side. */
export function wordReasons({ dossier, models, readings }: Asked, decision: FitDecision): Reason[] {
  const shown = decision.answers.slice(0, mostAnswersShown)
  return [
    ...wordOpenSet(decision),
    ...wordDateCode(models, readings),
    ...wordChain(dossier, decision),
    ...uniqueReasons(shown.flatMap(answer => wordMetAnswer(dossier, answer, decision.models.open))),
    ...wordAttributes({ dossier, models, readings }, decision),
    ...wordTogether(dossier, decision),
  ]
}

const mostAnswersShown = 4

function wordOpenSet({ models, verdict }: FitDecision): Reason[] {
  if (models.open < 2) return []
  const text = {
    fits: `Fits whichever of the ${models.open} open models it is.`,
    'fits-with-changes': `Fits, with changes, whichever of the ${models.open} open models it is.`,
    ask: `Of the ${models.open} open models it fits ${models.yes}, not ${models.no}${models.undecided > 0 ? `; of ${models.undecided} more must be read` : ''}.`,
    'does-not-fit': `Fits none of the ${models.open} open models.`,
    'no-record': `Of the ${models.open} open models none is on record with it.`,
  }[verdict]
  return [{ code: 'open-models', text, source: null }]
}

function wordDateCode(models: readonly ModelFacts[], { serial, made }: Readings): Reason[] {
  const [model] = models
  if (serial === null || made !== null || model === undefined || model.madeBySerial.length === 0) return []
  const when = daysOfModel(model, made).map(wordDays).join(' or ')
  return [
    {
      code: 'made-by-serial',
      text: `Serial ${serial} dates it ${when}.`,
      source: `date code of ${model.brand}`,
    },
  ]
}

function wordChain(
  { parts }: PartDossier,
  { chain, current, alsoNeeds: all, answers }: FitDecision,
): Reason[] {
  if (current === null || chain.length < 2) return []
  const alsoNeeds = needsOfReplacing(all, gatherTogether(answers))
  const [first, ...rest] = chain.map(id => parts.get(id)?.partNumber)
  const needs = alsoNeeds.length > 0 ? ` Also needed: ${alsoNeeds.join(', ')}.` : ''
  const steps = rest.map(number => `by ${number}`).join(', then ')
  return [
    {
      code: 'superseded',
      text: `${first} is replaced ${steps}.${needs}`,
      source: 'catalogue, supersessions',
    },
  ]
}

function wordMetAnswer({ parts, families }: PartDossier, answer: MetAnswer, open: number): Reason[] {
  const part = parts.get(answer.current)
  const family = part && families.get(part.familyId)
  if (part === undefined || family === undefined || answer.because === 'attribute-disagrees') return []
  const ofWhich = answer.models < open ? ` (${answer.models} of ${open} models)` : ''
  if (answer.statements.length === 0) {
    const text = `Nothing is said of ${part.partNumber} or of ${family.name} for ${open > 1 ? 'these models' : 'this model'}${ofWhich}.`
    return [{ code: answer.because, text, source: null }]
  }
  return answer.statements.map(statement => ({
    code: answer.because,
    text: `${wordStatement(statement, answer, { part, family, parts })}${ofWhich}.`,
    source: statement.source,
  }))
}

interface Words {
  readonly part: PartFacts
  readonly family: FamilyFacts
  readonly parts: ReadonlyMap<PartId, PartFacts>
}

function wordStatement(
  statement: Statement,
  { because, alsoNeeds: all, together }: KnownAnswer,
  { part, family, parts }: Words,
): string {
  const alsoNeeds = needsOfReplacing(all, together)
  const subject = statement.partId === null ? family.name : (parts.get(statement.partId)?.partNumber ?? '')
  const conditions = wordConditions(statement)
  const when = conditions.length > 0 ? `, ${conditions.join(', ')}` : ''
  switch (because) {
    case 'listed-part':
    case 'listed-family':
    case 'attribute-disagrees':
      return `${subject}: listed${when}`
    case 'listed-as-replaced':
      return `${subject}: listed${when}; ${part.partNumber} takes its place${alsoNeeds.length > 0 ? `, with ${alsoNeeds.join(', ')}` : ''}`
    case 'excluded-part':
    case 'excluded-family':
      return `${subject}: must not be used here${when}`
    case 'conditions-fail':
      return `${subject}: listed only ${conditions.join(', ')}`
    case 'safety-device-not-listed':
      return `${family.name} is listed${when}, but it is a safety device: only a part listed by its own number may go in, and ${part.partNumber} is not`
    case 'nothing-said':
      return `Nothing is said of ${subject} for this model`
  }
}

/** What a statement asks besides the model: `made 2014-06 on`, `serial 4000 to 4999`, `position left`. */
export function wordConditions({
  made,
  serial,
  position,
}: Pick<Statement, 'made' | 'serial' | 'position'>): string[] {
  const dated = made.first !== anyDay.first || made.last !== anyDay.last
  return [
    ...(dated ? [`made ${wordDays(made)}`] : []),
    ...(serial === null ? [] : [`serial ${wordSerialRange(serial)}`]),
    ...(position === null ? [] : [`position ${position}`]),
  ]
}

function wordAttributes(asked: Asked, decision: FitDecision): Reason[] {
  return compareSideBySide(asked, decision).map(({ attribute, unit, part, appliance, agreement }) => {
    const inUnit = unit === '' ? '' : ` ${unit}`
    const has = appliance === null ? 'not stated' : `${appliance}${inUnit}`
    return {
      code: `attribute-${agreement}`,
      text: `${attribute}: part ${part}${inUnit}, appliance ${has}${agreementWords[agreement]}`,
      source: null,
    }
  })
}

const agreementWords = { agrees: '; agrees.', disagrees: '; disagrees.', unknown: '; not compared.' }

function uniqueReasons(reasons: readonly Reason[]): Reason[] {
  return [...new Map(reasons.map(reason => [`${reason.text}\u0000${reason.source}`, reason])).values()]
}
