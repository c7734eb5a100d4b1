import type { FittingFamily, FittingPart, FittingParts } from '../../../shared-schemas/fit-check.ts'
import { alignColumns } from './align-columns.ts'
import type { Command } from './command.ts'
import { givenReadings, needed, present, readingOptions } from './options.ts'
import { verdictWords } from './verdict-words.ts'

export const parts: Command = {
  name: 'parts',
  words: '--model "<text>"',
  leastWords: 0,
  mostWords: 0,
  does: 'lists what fits an appliance, with where each part is',
  options: {
    model: {
      value: 'text',
      does: 'what can be read of the model number; ? stands for a character that cannot',
    },
    function: { value: 'words', does: 'only parts of this function, family or name: "drain", "door seal"' },
    ...readingOptions,
  },
  shop: 'must-exist',
  async run(given, { ask }) {
    const model = needed(given, 'model', 'parts')
    const found = await ask('fit-check.list-fitting-parts', {
      model,
      ...givenReadings(given),
      ...present(given, ['function']),
    })
    const { function: words } = present(given, ['function'])
    return { value: found, text: writeParts(found, { model, words }), needsPerson: found.outcome === 'none' }
  },
}

export const models: Command = {
  name: 'models',
  words: '--part <number>',
  leastWords: 0,
  mostWords: 0,
  does: 'lists every model that a part goes into',
  options: { part: { value: 'number', does: 'the part number, as printed on the part or its bag' } },
  shop: 'must-exist',
  async run(given, { ask }) {
    const found = await ask('fit-check.list-fitted-models', { part: needed(given, 'part', 'models') })
    const rows = found.models.map(({ brand, modelNumber, conditions }) => [
      `  ${brand}`,
      modelNumber,
      conditions.join('; '),
    ])
    const lines = [
      `${found.partNumber} goes into ${found.count} ${found.count === 1 ? 'model' : 'models'}:`,
      ...alignColumns(rows),
    ]
    const text = found.count === 0 ? `No model is on record for ${found.partNumber}.` : lines.join('\n')
    return { value: found, text, needsPerson: false }
  },
}

interface AskedFor {
  readonly model: string
  readonly words: string | undefined
}

function writeParts({ outcome, models: open, families }: FittingParts, { model, words }: AskedFor): string {
  if (outcome === 'none')
    return `No model agrees with “${model}”. Read the plate again, or try the number on the door.`
  const over = open === 1 ? 'this model' : `all ${open} models that “${model}” leaves open`
  if (families.length === 0)
    return words === undefined
      ? `Nothing is on record for ${over}.`
      : `Nothing called “${words}” is on record for ${over}. Try another word, or leave it out to see everything.`
  const heading = `What goes into ${over}:`
  return [heading, ...families.flatMap(writeFamily)].join('\n')
}

function writeFamily({
  name,
  function: does,
  verdict,
  quantityPerAppliance,
  cautions,
  parts,
}: FittingFamily) {
  const takes = quantityPerAppliance === null ? '' : `, takes ${quantityPerAppliance}`
  return [
    '',
    `${name} (${does}): ${verdictWords[verdict]}${takes}`,
    ...alignColumns(parts.map(writePart)),
    ...cautions.map(({ text }) => `  ! ${text}`),
  ]
}

function writePart({ partNumber, kind, verdict, onHand, price, supersededBy }: FittingPart): string[] {
  const where = onHand.map(
    ({ location, bin, quantity }) => `${quantity} in ${location}${bin ? ` ${bin}` : ''}`,
  )
  return [
    `  ${partNumber}`,
    kind,
    verdictWords[verdict],
    where.join(', ') || 'none in stock',
    [
      price === null ? '' : `${price.price} ${price.currency} from ${price.supplier}`,
      supersededBy === null ? '' : `now ${supersededBy}`,
    ]
      .filter(said => said !== '')
      .join('; '),
  ]
}
