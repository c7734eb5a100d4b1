import type { VerdictEvent } from '../../../shared-schemas/fit-records.ts'
import type { Output } from '../../../shared-schemas/index.ts'
import { alignColumns } from './align-columns.ts'
import type { Command } from './command.ts'
import { givenReadings, needed, readingOptions } from './options.ts'
import { verdictWords } from './verdict-words.ts'

export const history: Command = {
  name: 'history',
  words: '--model "<number>" --part <number>',
  leastWords: 0,
  mostWords: 0,
  does: 'lists what was said and recorded of a part in one model, and the verdict of a day',
  options: {
    model: { value: 'number', does: 'the full model number, as printed' },
    part: { value: 'number', does: 'the part number, as printed on the part or its bag' },
    'as-of': { value: 'date', does: 'also the verdict by what was said at the end of that day: 2026-11-23' },
    ...readingOptions,
  },
  shop: 'must-exist',
  async run(given, { ask }) {
    const asOf = given.text('as-of')
    const found = await ask('fit-check.read-history', {
      model: needed(given, 'model', 'history'),
      part: needed(given, 'part', 'history'),
      ...givenReadings(given),
      ...(asOf === undefined ? {} : { asOf }),
    })
    return { value: found, text: writeHistory(found), needsPerson: false }
  },
}

function writeHistory({ model, partNumber, events, asOf }: Output<'fit-check.read-history'>): string {
  const about = `${partNumber} in ${model.brand} ${model.modelNumber}`
  return [
    events.length === 0 ? `Nothing was ever said or recorded of ${about}.` : `${about}:`,
    ...alignColumns(events.map(writeEvent)),
    ...(asOf === null
      ? []
      : [
          `On ${asOf.date}: ${verdictWords[asOf.verdict]}.`,
          ...asOf.reasons.map(({ text, source }) => `  ${source === null ? text : `${text} (${source})`}`),
        ]),
  ].join('\n')
}

function writeEvent({ at, text, source }: VerdictEvent): string[] {
  return [`  ${at?.slice(0, 10) ?? 'before'}`, `${text} (${source})`]
}
