import type { CheckedCondition, FitAnswer, SideBySide, Verdict, Why } from './fit-check.ts'
import { wordAskChosen } from './word-ask-chosen.ts'

/**
 * The reasoning of a verdict as a short numbered chain, for a screen or a sheet of paper: the number typed, what
 * replaces it, what is said and by whom, each condition with its reading, the attributes side by side, and what goes
 * in together.
 */
export function wordWhy(answer: FitAnswer): string[] {
  const steps = [
    wordModel(answer),
    wordNumber(answer),
    ...(answer.why === null ? wordReasons(answer) : wordSaid(answer.why, answer)),
    ...wordAttributes(answer.why),
    ...wordTogether(answer.why),
    ...wordKits(answer.why),
  ]
  return [
    `${answer.part.typed}: ${verdictWords[answer.verdict]}.`,
    ...steps.flatMap(([first, ...more], at) => [
      `${at + 1}. ${first ?? ''}`,
      ...more.map(line => `   ${line}`),
    ]),
    ...answer.ask.map(({ text }) => `To find out: ${text}`),
    ...wordAskChosen(answer.ask, answer.askChosen),
    ...reasonsCalled(answer, 'confirmed').map(text => `Beside it: ${text}`),
    ...answer.hints.map(({ text }) => `Beside it: ${text}`),
    ...answer.cautions.map(({ text }) => `Mind: ${text}`),
  ]
}

const verdictWords: Readonly<Record<Verdict, string>> = {
  fits: 'fits',
  'fits-with-changes': 'fits, with changes',
  ask: 'cannot be decided yet',
  'does-not-fit': 'does not fit',
  'no-record': 'nothing on record, which is not a yes',
}

type Step = readonly string[]

function reasonsCalled({ reasons }: FitAnswer, called: string): string[] {
  return reasons.filter(({ code }) => code === called).map(({ text }) => text)
}

function wordModel(answer: FitAnswer): Step {
  const { model, models } = answer
  if (model !== null) return [`Appliance: ${model.brand} ${model.modelNumber}, ${model.applianceType}.`]
  if (models.open === 0) return ['Appliance: no model agrees with what was read.']
  return [
    `Appliance: ${models.open} ${models.open === 1 ? 'model' : 'models'} left open; ${models.yes} yes, ${models.no} no, ${models.undecided} undecided.`,
    ...reasonsCalled(answer, 'model-not-confirmed'),
  ]
}

/** The description is that of the number supplied today, so it stands with that one. */
function wordNumber({ part, why }: FitAnswer): Step {
  if (part.partNumber === null) return [`Number: ${part.typed} is not in the catalogue.`]
  const typed =
    part.partNumber === part.typed ? part.typed : `${part.typed}, in the catalogue ${part.partNumber}`
  const described = part.description ? ` (${part.description})` : ''
  const replaced = why?.replaced ?? []
  return [
    `Number: ${typed}${replaced.length === 0 ? described : ''}.`,
    ...replaced.map(({ by, alsoNeeds }, at) => {
      const isLast = at === replaced.length - 1
      const needs = alsoNeeds.length > 0 ? `, with ${alsoNeeds.join(', ')}` : ''
      return `Replaced by ${by}${isLast ? described : ''}${needs}; catalogue, supersessions.`
    }),
  ]
}

function wordReasons({ reasons }: FitAnswer): Step[] {
  return reasons.map(({ text, source }) => [source === null ? text : `${text} (${source})`])
}

function wordSaid({ statements }: Why, { models }: FitAnswer): Step[] {
  if (statements.length === 0) return [['Said: nothing, of the part or of its family.']]
  return statements.map(({ says, subject, position, source, models: weighed, conditions }) => {
    const where = position === null ? '' : `, position ${position}`
    const ofWhich = weighed < models.open ? `; ${weighed} of ${models.open} models` : ''
    const verb = says === 'includes' ? 'listed' : 'must not be used here'
    return [`Said: ${subject}: ${verb}${where} (${source}${ofWhich}).`, ...conditions.map(wordCondition)]
  })
}

function wordCondition({ reading, wants, read, from, holds }: CheckedCondition): string {
  const known = read === null || from === null ? 'not read' : `${read} ${fromWords[from]}`
  const outcome = holds === null ? 'open' : holds ? 'holds' : 'fails'
  return `only ${reading} ${wants}; ${known}: ${outcome}`
}

const fromWords = {
  plate: 'by the plate',
  measured: 'measured on the old part',
  'date-code': "by the serial's date code",
  catalogue: 'by the catalogue',
}

function wordAttributes(why: Why | null): Step[] {
  if (why === null || why.attributes.length === 0) return []
  return [['Side by side:', ...why.attributes.map(wordSideBySide)]]
}

function wordSideBySide({ attribute, unit, part, appliance, from, agreement }: SideBySide): string {
  const inUnit = unit === '' ? '' : ` ${unit}`
  const has = appliance === null || from === null ? 'not stated' : `${appliance}${inUnit} ${fromWords[from]}`
  return `${attribute}: part ${part}${inUnit}; appliance ${has}: ${agreementWords[agreement]}`
}

const agreementWords = { agrees: 'agrees', disagrees: 'disagrees', unknown: 'not compared' }

function wordTogether(why: Why | null): Step[] {
  if (why === null || why.together.length === 0) return []
  return [
    [
      'Replaced together with it; catalogue, replaced together:',
      ...why.together.map(({ part, quantity, from, why: said }) => {
        const because = said === null ? '' : ` (${said})`
        return `${quantity} of ${part}${because}: ${providedWords[from]}`
      }),
    ],
  ]
}

const providedWords = {
  besides: 'to be bought besides',
  'needed-anyhow': 'needed by the replacement as well',
  'in-kit': 'comes in this kit',
  'in-count': 'the appliance takes that many',
}

function wordKits(why: Why | null): Step[] {
  if (why === null) return []
  const contents = why.contents.map(({ part, quantity }) => `${quantity} of ${part}`)
  return [
    ...(contents.length > 0 ? [['It is a kit; catalogue, kits:', ...contents]] : []),
    ...(why.kits.length > 0 ? [[`It also comes in ${why.kits.join(', ')}; catalogue, kits.`]] : []),
  ]
}
