import { type AskedFor, decideFit } from '../../../../electron/fit-check/decide-fit.ts'
import { asReadings } from '../../../../electron/fit-check/read-question.ts'
import type { PlateReadings } from '../../../../shared-schemas/plate-reading.ts'
import type { Question } from './generate-questions.ts'
import { type Completion, listCompletions, readingOf } from './list-completions.ts'

/** What is wrong with the program's answer to a question, by the naive reading of the rules; undefined when nothing is. */
export function findFault(question: Question): string | undefined {
  const { dossier, models, plate } = question
  const decision = decideFit(dossier, models, asReadings(plate))
  const completions = listCompletions(question)
  const labels = new Set(completions.map(labelOf))
  switch (decision.verdict) {
    case 'fits':
      return labels.size === 1 &&
        completions.every(({ answer }) => answer.outcome === 'yes' && answer.needs === '')
        ? undefined
        : 'says fits, which is not proved'
    case 'fits-with-changes':
      return labels.size === 1 &&
        completions.every(({ answer }) => answer.outcome === 'yes' && answer.needs !== '')
        ? undefined
        : 'says fits with changes, which is not proved'
    case 'does-not-fit':
      return completions.every(({ answer }) => answer.outcome === 'no')
        ? undefined
        : 'says does not fit, which is not refuted'
    case 'no-record':
      return completions.every(({ answer }) => answer.outcome !== 'yes') &&
        completions.some(({ answer }) => answer.outcome === 'no-record')
        ? undefined
        : 'says no record where something is said'
    case 'ask':
      return faultOfAsking(question, decision.ask, completions)
  }
}

function labelOf({ answer }: Completion): string {
  return answer.outcome === 'yes' ? `yes ${answer.sold} ${answer.needs}` : 'no'
}

function faultOfAsking(
  question: Question,
  ask: readonly AskedFor[],
  completions: readonly Completion[],
): string | undefined {
  if (new Set(completions.map(labelOf)).size < 2)
    return 'asks although the answer is the same whatever is read'
  const asked = ask.flatMap(one =>
    one.positions.length > 0 ? one.positions.map(at => `character ${at}`) : [one.reading],
  )
  if (!tells(question, asked, completions)) return `asks for ${asked.join(', ')}, which does not decide`
  const smaller = setsOf(allReadings(question), asked.length - 1).find(set =>
    tells(question, set, completions),
  )
  if (smaller !== undefined) return `asks for ${asked.join(', ')} where ${smaller.join(', ')} would do`
  return faultAfterReading(question, ask, completions)
}

/** Supplies what one appliance shows, and looks whether the verdict is decided. */
function faultAfterReading(
  question: Question,
  ask: readonly AskedFor[],
  completions: readonly Completion[],
): string | undefined {
  const shown = completions[completions.length >> 1]
  if (shown === undefined) return undefined
  const positions = ask.flatMap(one => one.positions)
  const names = ask.map(one => one.reading)
  const models = question.models.filter(
    model =>
      positions.every(at => (model.key[at - 1] ?? '') === (shown.model.key[at - 1] ?? '')) &&
      (!names.includes('brand') || model.brand === shown.model.brand),
  )
  const plate: PlateReadings = {
    ...question.plate,
    ...(names.includes('made') ? { made: new Date(shown.day * 86_400_000).toISOString().slice(0, 10) } : {}),
    ...(names.includes('serial') ? { serial: String(shown.serial) } : {}),
    ...(names.includes('volts') ? { volts: shown.has.get('volts')?.value ?? '' } : {}),
    ...(names.includes('thread') ? { measured: { thread: shown.has.get('thread')?.value ?? '' } } : {}),
  }
  const { verdict } = decideFit(question.dossier, models, asReadings(plate))
  return verdict === 'ask' ? `still asks after ${names.join(', ')} was read` : undefined
}

function tells(
  { dossier }: Question,
  readings: readonly string[],
  completions: readonly Completion[],
): boolean {
  const seen = new Map<string, string>()
  return completions.every(completion => {
    const shown = readings.map(reading => readingOf(dossier, completion, reading)).join('|')
    const label = labelOf(completion)
    const known = seen.get(shown)
    if (known === undefined) seen.set(shown, label)
    return known === undefined || known === label
  })
}

function allReadings({ models }: Question): string[] {
  const longest = Math.max(...models.map(({ key }) => key.length))
  return [
    'brand',
    'made',
    'serial',
    'volts',
    'thread',
    ...Array.from({ length: longest }, (_, at) => `character ${at + 1}`),
  ]
}

function setsOf(items: readonly string[], size: number): string[][] {
  if (size <= 0) return [[]]
  return items.flatMap((item, at) => setsOf(items.slice(at + 1), size - 1).map(rest => [item, ...rest]))
}
