import type {
  CharacterDifference,
  FoundModels,
  ModelCandidate,
} from '../../../shared-schemas/model-lookup.ts'
import type { Problem } from '../../../shared-schemas/problem.ts'
import { wordProblem } from '../../../shared-schemas/problem-wording.ts'
import { Refusal } from '../../requests/refusal.ts'
import { alignColumns } from './align-columns.ts'
import type { Answer, Command, Desk, Given } from './command.ts'
import { present, wholeNumber } from './options.ts'
import { readTexts } from './read-questions.ts'
import { WrongUse } from './wrong-use.ts'

export const find: Command = {
  name: 'find',
  words: '"<plate text>"',
  leastWords: 0,
  mostWords: 1,
  does: 'names the models that a plate text may mean, best first',
  options: {
    brand: { value: 'brand', does: 'only models of this brand' },
    type: { value: 'type', does: 'only appliances of this type' },
    top: { value: 'number', does: 'how many models at most; 10 unless told' },
    from: { value: 'texts.txt', does: 'answer each line of a file, in order, as an array' },
  },
  shop: 'must-exist',
  async run(given, desk) {
    const text = given.words[0]
    const file = given.text('from')
    if ((text === undefined) === (file === undefined))
      throw new WrongUse(
        'find takes one plate text, or --from and a file of them. See tallyplate find --help.',
      )
    return file === undefined ? findOne(desk, given, text ?? '') : findMany(desk, given, readTexts(file))
  },
}

async function findOne(desk: Desk, given: Given, text: string): Promise<Answer> {
  const found = await desk.ask('model-lookup.find-models', questionOf(given, text))
  return { value: found, text: writeFound(found), needsPerson: found.outcome === 'none' }
}

/** A line that cannot be looked up has its problem in its place, so that answers stay in step with the lines. */
async function findMany(desk: Desk, given: Given, texts: readonly string[]): Promise<Answer> {
  const answers: (FoundModels & { readonly problem?: Problem })[] = []
  for (const text of texts) {
    const reply = await desk.reply('model-lookup.find-models', questionOf(given, text))
    // The reply is to this very request, so its value is that request's output.
    if (reply.ok) answers.push(reply.value as FoundModels)
    else answers.push({ ...foundNothing(text), problem: orGiveUp(reply.problem) })
  }
  return {
    value: answers,
    text: alignColumns(answers.map(writeLine)).join('\n'),
    needsPerson: answers.some(({ outcome }) => outcome === 'none'),
  }
}

/** What is wrong with one line is that line's answer; what is wrong with the shop or with us ends the whole. */
function orGiveUp(problem: Problem): Problem {
  if (problem.code === 'plate-text-too-short' || problem.code === 'malformed') return problem
  throw new Refusal(problem)
}

function foundNothing(typed: string): FoundModels {
  return { typed, key: '', outcome: 'none', openModels: 0, setAside: [], candidates: [] }
}

function questionOf(given: Given, text: string) {
  const { brand, type: applianceType } = present(given, ['brand', 'type'])
  const top = wholeNumber(given, 'top')
  return {
    text,
    ...(brand === undefined ? {} : { brand }),
    ...(applianceType === undefined ? {} : { applianceType }),
    ...(top === undefined ? {} : { top }),
  }
}

function writeFound(found: FoundModels): string {
  const { outcome, candidates, openModels } = found
  const isSettled = outcome === 'exact' || outcome === 'several'
  const agreeing = isSettled ? candidates.slice(0, openModels) : candidates
  const others = candidates.slice(agreeing.length)
  const more = openModels - candidates.length
  return [
    writeOutcome(found),
    ...writeCandidates(agreeing),
    ...(outcome === 'several' && more > 0 ? [`  and ${more} more; --top lists them`] : []),
    ...(others.length > 0 ? ['Close to it, to compare:', ...writeCandidates(others)] : []),
  ].join('\n')
}

function writeCandidates(candidates: readonly ModelCandidate[]): string[] {
  return alignColumns(
    candidates.map(candidate => [
      `  ${candidate.brand}`,
      candidate.modelNumber,
      candidate.applianceType,
      writeDifferences(candidate),
    ]),
  )
}

function writeOutcome({ outcome, typed, openModels, candidates }: FoundModels): string {
  switch (outcome) {
    case 'exact':
      return `“${typed}” is in the catalogue:`
    case 'near':
      return `“${typed}” is most likely this one; compare it with the plate:`
    case 'several':
      return `“${typed}” leaves ${openModels} models open:`
    case 'none':
      return candidates.length === 0
        ? `No model agrees with “${typed}”. Read the plate again, or try the number on the door.`
        : `No model agrees with “${typed}”. The nearest:`
  }
}

function writeDifferences({ differences, matched, salesNames }: ModelCandidate): string {
  const sold = matched === 'sales-name' ? `sold as ${salesNames.join(', ')}` : ''
  return [sold, ...joinRuns(differences).map(writeRun)].filter(part => part !== '').join('; ')
}

interface Run extends CharacterDifference {
  readonly to: number
}

/** Differences that stand side by side are read as one. */
function joinRuns(differences: readonly CharacterDifference[]): Run[] {
  const runs: Run[] = []
  for (const { at, typed, catalogue } of differences) {
    const last = runs.at(-1)
    if (last !== undefined && at - last.to <= 1 && (typed === '') === (last.typed === ''))
      runs.splice(-1, 1, {
        at: last.at,
        to: at,
        typed: last.typed + typed,
        catalogue: last.catalogue + catalogue,
      })
    else runs.push({ at, to: at, typed, catalogue })
  }
  return runs
}

function writeRun({ at, to, typed, catalogue }: Run): string {
  const place = at === to ? `place ${at}` : `places ${at} to ${to}`
  if (typed === '') return `${place}: not typed, catalogue ${catalogue}`
  return `${place}: typed ${typed}, catalogue ${catalogue || 'nothing'}`
}

function writeLine(found: FoundModels & { readonly problem?: Problem }): string[] {
  return [found.typed, found.outcome, writeBest(found)]
}

function writeBest({
  outcome,
  openModels,
  candidates,
  problem,
}: FoundModels & { readonly problem?: Problem }): string {
  if (problem !== undefined) return wordProblem(problem)
  const [best] = candidates
  if (best === undefined) return ''
  const named = `${best.brand} ${best.modelNumber}`
  return outcome === 'several' ? `${openModels} models, first ${named}` : named
}
