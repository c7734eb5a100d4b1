import type { Verdict } from '../../shared-schemas/fit-check.ts'
import type { OrderFlag } from '../../shared-schemas/order-check.ts'
import { countPerAppliance } from '../fit-check/count-per-appliance.ts'
import type { JudgedPart } from '../fit-check/judge-many.ts'
import { wordReasons } from '../fit-check/word-answer.ts'
import { wordAsked } from '../fit-check/word-asked.ts'
import type { OpenModels } from '../model-lookup/open-models.ts'
import { flag } from './flag-table.ts'
import { type LineFacts, piecesOf } from './line-facts.ts'

/** The verdict that a line shows: null where no appliance was named, and never a yes that is not proved. */
export function verdictOfLine({ appliance, part, judged }: LineFacts): Verdict | null {
  switch (appliance.kind) {
    case 'none':
    case 'incomplete':
      return null
    case 'unreadable':
    case 'refused':
      return part === undefined ? 'no-record' : 'ask'
    case 'read':
      return judged?.decision.verdict ?? 'no-record'
  }
}

/** Whatever is not proved to fit the line's appliance is a stop, with why, or with the reading that would decide. */
export function flagFit(facts: LineFacts): OrderFlag[] {
  const { appliance, judged } = facts
  if (appliance.kind !== 'read') return []
  if (appliance.open.models.length === 0)
    return [
      flag(
        'model-unknown',
        `The catalogue has no model that agrees with “${appliance.open.typed}”. Read the plate again.`,
      ),
    ]
  return judged === undefined ? [] : flagVerdict(facts, judged)
}

function flagVerdict(facts: LineFacts, judged: JudgedPart): OrderFlag[] {
  const { decision, open } = judged
  const to = wordAppliance(open)
  switch (decision.verdict) {
    case 'fits':
    case 'fits-with-changes':
      return flagCount(facts, judged)
    case 'ask': {
      const differs = decision.modelReasons.map(({ text }) => text)
      const asked = decision.ask.map(one => wordAsked(one).text)
      return [
        flag(
          'fit-not-decided',
          `Whether it fits ${to} is not decided. ${[...differs, ...asked].slice(0, 2).join(' ')}`.trim(),
        ),
      ]
    }
    case 'does-not-fit':
      return [flag('does-not-fit', `Does not fit ${to}. ${wordWhy(judged)}`.trim())]
    case 'no-record':
      return [flag('no-record', `Nothing on record says that it fits ${to}. ${wordWhy(judged)}`.trim())]
  }
}

/** More than one appliance takes is rarely meant, though somebody may want one for the shelf. */
function flagCount(facts: LineFacts, { decision }: JudgedPart): OrderFlag[] {
  const yes = decision.answers.filter(({ outcome }) => outcome === 'yes')
  const listed = countPerAppliance(yes.flatMap(({ statements }) => statements))
  const pair = facts.companions.find(({ partId }) => partId === facts.current?.partId)
  const takes = listed === null ? null : Math.max(listed, pair?.quantity ?? 0)
  const pieces = piecesOf(facts)
  if (takes === null || pieces === undefined || pieces <= takes) return []
  return [
    flag(
      'above-appliance',
      `One appliance takes ${takes}; ${pieces} are ordered. Lower the quantity, or order the rest as a stock line.`,
    ),
  ]
}

/** What decided a no; agreeing attributes and the way the number was followed decide nothing. */
function wordWhy(judged: JudgedPart): string {
  return wordReasons(judged, judged.decision)
    .filter(({ code }) => !besides.includes(code))
    .slice(0, 2)
    .map(({ text, source }) => (source === null ? text : `${text.replace(/\.$/, '')} (${source}).`))
    .join(' ')
}

const besides = ['open-models', 'made-by-serial', 'superseded', 'attribute-agrees', 'attribute-unknown']

export function wordAppliance({ models, typed }: OpenModels): string {
  const [model] = models
  return models.length === 1 && model !== undefined
    ? `${model.brand} ${model.modelNumber}`
    : `“${typed}” (${models.length.toLocaleString('en')} open models)`
}
