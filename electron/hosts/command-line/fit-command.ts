import { type FitAnswer, judgeFit } from '../../../shared-schemas/fit-check.ts'
import { wordAskChosen } from '../../../shared-schemas/word-ask-chosen.ts'
import { wordWhy } from '../../../shared-schemas/word-why.ts'
import { alignColumns } from './align-columns.ts'
import type { Answer, Command, Desk, Given } from './command.ts'
import { givenReadings, needed, readingOptions } from './options.ts'
import { type QuestionRow, readQuestionRows } from './read-questions.ts'
import { verdictWords } from './verdict-words.ts'
import { WrongUse } from './wrong-use.ts'

export const fit: Command = {
  name: 'fit',
  words: '--model "<text>" --part <number>',
  leastWords: 0,
  mostWords: 0,
  does: 'says whether a part fits an appliance, with reasons; the model text may be incomplete',
  options: {
    model: {
      value: 'text',
      does: 'what can be read of the model number; ? stands for a character that cannot',
    },
    part: { value: 'number', does: 'the part number, as printed on the part or its bag' },
    ...readingOptions,
    why: { does: 'the whole reasoning as a numbered chain, to read or to print' },
    from: {
      value: 'questions.csv',
      does: 'answer each row of brand,model,part,made,serial,volts,hertz, in order, as an array',
    },
  },
  shop: 'must-exist',
  async run(given, desk) {
    const file = given.text('from')
    if (file === undefined) return judgeOne(desk, given)
    if (given.has('model') || given.has('part'))
      throw new WrongUse('fit takes --model and --part, or --from and a file of them; not both.')
    if (given.has('why')) throw new WrongUse('fit takes --why with one question, not with a file of them.')
    return judgeMany(desk, readQuestions(file))
  },
}

async function judgeOne({ ask }: Desk, given: Given): Promise<Answer> {
  const answer = await ask('fit-check.judge-fit', {
    model: needed(given, 'model', 'fit'),
    part: needed(given, 'part', 'fit'),
    ...givenReadings(given),
  })
  return {
    value: answer,
    text: given.has('why') ? wordWhy(answer).join('\n') : writeAnswer(answer),
    needsPerson: answer.verdict !== 'fits',
  }
}

async function judgeMany({ ask }: Desk, questions: readonly Question[]): Promise<Answer> {
  const answers: FitAnswer[] = []
  for (const question of questions) answers.push(await ask('fit-check.judge-fit', question))
  const rows = answers.map((answer, at) => [
    questions[at]?.model ?? '',
    answer.part.typed,
    verdictWords[answer.verdict],
    answer.reasons[0]?.text ?? answer.ask[0]?.text ?? '',
  ])
  return {
    value: answers,
    text: alignColumns(rows).join('\n'),
    needsPerson: answers.some(({ verdict }) => verdict !== 'fits'),
  }
}

type Question = (typeof judgeFit)['input']['_output']

const known = ['brand', 'model', 'part', 'made', 'serial', 'volts', 'hertz', 'watts']

/** Every row is checked before the first is answered: a file that is wrong anywhere is mended once, not found out bit by bit. */
function readQuestions(file: string): Question[] {
  return readQuestionRows(file, { known, needed: ['model', 'part'] }).map(row => checkQuestion(file, row))
}

function checkQuestion(file: string, { line, cells }: QuestionRow): Question {
  const checked = judgeFit.input.safeParse(cells)
  if (checked.success) return checked.data
  const [first] = checked.error.issues
  const column = String(first?.path[0] ?? '')
  const why = cells[column] === undefined ? 'is empty' : `${first?.message}; “${cells[column]}” is not that`
  throw new WrongUse(`${file}, line ${line}, ${column}: ${why}. Mend that row and ask again.`)
}

/** The verdict first, then why, what to read next, what to mind. */
function writeAnswer(answer: FitAnswer): string {
  const { part, models, model, reasons, ask, cautions, insteadTry, alsoNeeds, hints } = answer
  const appliance = model === null ? `${models.open} models left open` : `${model.brand} ${model.modelNumber}`
  return [
    `${part.typed}: ${verdictWords[answer.verdict]} (${appliance}).`,
    ...(part.chain.length > 1 ? [`Supplied today as ${part.current} (${part.chain.join(' → ')}).`] : []),
    ...(answer.quantityPerAppliance === null ? [] : [`The appliance takes ${answer.quantityPerAppliance}.`]),
    ...section(
      'Because',
      reasons.map(({ text, source }) => (source === null ? text : `${text} (${source})`)),
    ),
    ...section('Find out', [...ask.map(({ text }) => text), ...wordAskChosen(ask, answer.askChosen)]),
    ...section(
      'Hint',
      hints.map(({ text }) => text),
    ),
    ...section('Also needed', alsoNeeds),
    ...section(
      'Mind',
      cautions.map(({ text }) => text),
    ),
    ...section('Instead try', insteadTry),
  ].join('\n')
}

function section(title: string, lines: readonly string[]): string[] {
  return lines.length === 0 ? [] : [`${title}:`, ...lines.map(line => `  ${line}`)]
}
