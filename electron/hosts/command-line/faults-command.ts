import type { CheckAnswer, Remedy, WeighedFaults } from '../../../shared-schemas/fault-finding.ts'
import type { FaultSymptom } from '../../../shared-schemas/fault-guide.ts'
import type { FittingFamily } from '../../../shared-schemas/fit-check.ts'
import type { ApplianceQuestion } from '../../../shared-schemas/plate-reading.ts'
import {
  nameRemedy,
  wordAnswer,
  wordArithmetic,
  wordEnd,
  wordLicensed,
  wordMinutes,
  wordShare,
} from '../../../shared-schemas/word-faults.ts'
import { alignColumns } from './align-columns.ts'
import type { Answer, Command, Desk, Given } from './command.ts'
import { present, readPair } from './options.ts'
import { verdictWords } from './verdict-words.ts'
import { WrongUse } from './wrong-use.ts'

export const faults: Command = {
  name: 'faults',
  words: '--type <appliance> --symptom "<words>"',
  leastWords: 0,
  mostWords: 0,
  does: 'says what is likely wrong, what to check next and what is worth ordering; without a symptom, which it knows',
  options: {
    type: { value: 'appliance', does: 'the kind of appliance; not needed with a model number' },
    symptom: { value: 'words', does: "the guide's symptom, or other words for it that the guide has" },
    model: {
      value: 'text',
      does: 'the model number as far as it was read, for fit and for jobs of its platform',
    },
    brand: { value: 'brand', does: 'the brand on the plate or the door' },
    volts: { value: 'volts', does: 'as printed: 230, 220-240' },
    watts: { value: 'watts', does: 'as printed' },
    outcome: {
      value: 'check=outcome',
      does: 'what a check showed, in the words of the guide',
      repeats: true,
    },
    reading: { value: 'check=value', does: 'what was measured, with its unit: "heater=24 Ω"', repeats: true },
    skip: { value: 'check', does: 'a check that was skipped or could not be told', repeats: true },
    why: { does: 'the arithmetic behind the likeliest causes' },
  },
  shop: 'must-exist',
  run: async (given, desk) => (given.has('symptom') ? weigh(given, desk) : listSymptoms(given, desk)),
}

async function listSymptoms(given: Given, { ask }: Desk): Promise<Answer> {
  const type = given.text('type')
  const found = await ask('fault-guide.list-symptoms', type === undefined ? {} : { applianceType: type })
  const none = `The guide has no symptom${type === undefined ? '' : ` of a ${type}`}. Load faults.csv first.`
  return {
    value: found,
    text: found.symptoms.length === 0 ? none : alignColumns(found.symptoms.map(writeSymptom)).join('\n'),
    needsPerson: found.symptoms.length === 0,
  }
}

function writeSymptom({ applianceType, symptom, alsoSaid }: FaultSymptom): string[] {
  return [applianceType, symptom, alsoSaid.length === 0 ? '' : `also said: ${alsoSaid.join('; ')}`]
}

async function weigh(given: Given, desk: Desk): Promise<Answer> {
  const appliance = readAppliance(given)
  const weighed = await desk.ask('fault-guide.weigh-faults', {
    applianceType: given.text('type') ?? (await typeOf(desk, appliance)),
    symptom: given.text('symptom') ?? '',
    answers: readAnswers(given),
    ...(appliance === undefined ? {} : { appliance }),
  })
  const worth = await listWorth(desk, appliance, weighed)
  return {
    value: { ...weighed, worth },
    text: write(weighed, worth, given.has('why')),
    needsPerson: weighed.end !== 'settled',
  }
}

function readAppliance(given: Given): ApplianceQuestion | undefined {
  const model = given.text('model')
  return model === undefined ? undefined : { model, ...present(given, ['brand', 'volts', 'watts']) }
}

async function typeOf({ ask }: Desk, appliance: ApplianceQuestion | undefined): Promise<string> {
  if (appliance === undefined)
    throw new WrongUse('faults needs --type or --model. See tallyplate faults --help.')
  const { model, brand } = appliance
  const found = await ask('model-lookup.find-models', {
    text: model,
    top: 1,
    ...(brand === undefined ? {} : { brand }),
  })
  const type = found.candidates[0]?.applianceType
  if (type === undefined)
    throw new WrongUse(`No model agrees with “${model}”. Name the kind of appliance with --type.`)
  return type
}

function readAnswers(given: Given): CheckAnswer[] {
  return [
    ...given.texts('outcome').map(pair => {
      const [check, outcome] = readPair(pair, 'outcome')
      return { check, outcome }
    }),
    ...given.texts('reading').map(pair => {
      const [check, measured] = readPair(pair, 'reading')
      return { check, measured }
    }),
    ...given.texts('skip').map(check => ({ check, left: 'skipped' as const })),
  ]
}

/** The families of what it settled on, as they fit this model. */
async function listWorth(
  { ask }: Desk,
  appliance: ApplianceQuestion | undefined,
  { remedies, settledOn }: WeighedFaults,
): Promise<FittingFamily[]> {
  const wanted = new Set(
    remedies.slice(0, settledOn).flatMap(({ families }) => families.map(({ family }) => family)),
  )
  if (appliance === undefined || wanted.size === 0) return []
  const { families } = await ask('fit-check.list-fitting-parts', appliance)
  return families.filter(({ family }) => wanted.has(family))
}

function write(weighed: WeighedFaults, worth: readonly FittingFamily[], isWhyAsked: boolean): string {
  const { applianceType, symptom, answers, causes, remedies, settledOn, checks } = weighed
  const shown = causes.slice(0, mostCauses)
  return [
    `${applianceType}, ${symptom}: ${wordEnd(weighed)}`,
    ...answers.map(
      answer =>
        `  ${answer.asked.check}: ${wordAnswer(answer)}${answer.oddAtBest === null ? '' : ' — this contradicts the rest; check it again'}`,
    ),
    ...remedies.slice(0, settledOn).flatMap(writeRemedy),
    ...worth.flatMap(writeWorth),
    ...(weighed.end === 'not-yet' ? writeNext(checks[0]) : []),
    'It may be:',
    ...alignColumns(shown.map(({ cause, probability }) => [`  ${wordShare(probability)}`, cause])),
    ...(isWhyAsked
      ? shown.flatMap(({ cause, probability, arithmetic }) => [
          `${cause}:`,
          ...wordArithmetic(arithmetic, probability).map(line => `  ${line}`),
        ])
      : []),
  ].join('\n')
}

const mostCauses = 6

function writeRemedy(remedy: Remedy): string[] {
  const { endsIn, licensedFor, probability, advice } = remedy
  if (endsIn === 'licensed') return [wordLicensed(licensedFor)]
  return [`${nameRemedy(remedy)} (${wordShare(probability)})`, ...advice.map(line => `  ${line}`)]
}

function writeWorth({ name, cautions, parts }: FittingFamily): string[] {
  return [
    `${name}:`,
    ...alignColumns(
      parts.map(({ partNumber, verdict, onHand }) => [
        `  ${partNumber}`,
        verdictWords[verdict],
        onHand.map(({ quantity, location }) => `${quantity} in ${location}`).join(', ') || 'none in stock',
      ]),
    ),
    ...cautions.map(({ text }) => `  ! ${text}`),
  ]
}

function writeNext(next: WeighedFaults['checks'][number] | undefined): string[] {
  if (next === undefined) return []
  return [
    `Next: ${next.check}`,
    ...next.cautions.map(({ text }) => `  ! ${text}`),
    `  ${next.how}`,
    `  ${wordMinutes(next.minutes)} Answer: ${next.outcomes.join(', ')}.`,
  ]
}
