import type { AskedReading, Caution, Reason, Verdict } from '../../shared-schemas/fit-check.ts'
import type { PlateReadings } from '../../shared-schemas/plate-reading.ts'
import { verdictWords } from '../components/verdict-words.ts'

/** What a customer takes home or gets by mail about one part for one appliance. */
export interface Slip {
  readonly shop: string
  readonly appliance: {
    readonly typed: string
    readonly readings: PlateReadings
    /** The one model it came to; null while several are open. */
    readonly model: {
      readonly brand: string
      readonly modelNumber: string
      readonly applianceType: string
    } | null
    readonly openModels: number
    /** A person chose the model; the text alone did not decide it. */
    readonly isTaken: boolean
  }
  readonly part: {
    readonly typed: string
    readonly partNumber: string | null
    readonly current: string | null
    readonly description: string | null
  }
  readonly verdict: Verdict
  readonly quantityPerAppliance: number | null
  readonly reasons: readonly Reason[]
  readonly ask: readonly AskedReading[]
  readonly alsoNeeds: readonly string[]
  readonly cautions: readonly Caution[]
}

/** The slip as plain text: model, part, verdict, what was assumed, who says so, and every caution. */
export function wordSlip(slip: Slip): string {
  return [
    slip.shop,
    '',
    `Appliance: ${wordAppliance(slip.appliance)}`,
    ...wordPart(slip),
    `Answer: ${wordVerdict(slip)}`,
    ...slip.ask.map(({ text }) => `To be sure: ${text}`),
    ...wordReasons(slip.reasons),
    ...wordAssumptions(slip.appliance),
    ...slip.cautions.map(({ text }) => `Caution: ${text}`),
  ].join('\n')
}

function wordAppliance({ model, typed, openModels }: Slip['appliance']): string {
  if (model !== null) return `${model.brand} ${model.modelNumber}, ${model.applianceType}`
  return openModels > 1 ? `“${typed}”, ${openModels} models open` : `“${typed}”`
}

function wordPart({ part, quantityPerAppliance }: Slip): string[] {
  const { typed, partNumber, current, description } = part
  const number = current ?? partNumber ?? typed
  const asked = number === typed ? '' : `; asked for as ${typed}`
  const takes =
    quantityPerAppliance === null || quantityPerAppliance < 2
      ? ''
      : `; the appliance takes ${quantityPerAppliance}`
  return [`Part: ${number}${description === null ? '' : `, ${description}`}${asked}${takes}`]
}

function wordVerdict({ verdict, alsoNeeds, appliance }: Slip): string {
  const isYes = verdict === 'fits' || verdict === 'fits-with-changes'
  const whichever = isYes && appliance.openModels > 1 ? ', whichever model it is' : ''
  const needs = alsoNeeds.length > 0 ? ` Also needed: ${alsoNeeds.join(', ')}.` : ''
  return `${answerWords[verdict]}${whichever}.${needs}`
}

/** A customer reads this alone, so the two short words of the screen are written out. */
const answerWords: Readonly<Record<Verdict, string>> = {
  ...verdictWords,
  ask: 'Cannot be said yet',
  'no-record': 'No record; this is not a yes',
}

/** Who says so; where nobody is named, the reasoning itself. */
function wordReasons(reasons: readonly Reason[]): string[] {
  const sourced = reasons.filter(({ source }) => source !== null)
  return (sourced.length > 0 ? sourced : reasons).map(
    ({ text, source }) => `Because: ${text}${source === null ? '' : ` (${source})`}`,
  )
}

/** What the answer leans on besides the catalogue. */
function wordAssumptions({ typed, readings, model, isTaken }: Slip['appliance']): string[] {
  const { measured = {}, ...plate } = readings
  const read = [...Object.entries(plate), ...Object.entries(measured)].map(
    ([name, value]) => `${name} ${value}`,
  )
  return [
    `Assumed: the plate reads “${typed}”${read.length > 0 ? `, ${read.join(', ')}` : ''}.`,
    ...(isTaken && model !== null
      ? [`Assumed: the appliance is ${model.brand} ${model.modelNumber}, as chosen at the counter.`]
      : []),
  ]
}
