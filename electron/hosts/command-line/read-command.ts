import { parseArgs } from 'node:util'
import type { Command, Given, Option } from './command.ts'
import { findNearestWord } from './nearest-word.ts'
import { WrongUse } from './wrong-use.ts'

/** What the words after the program's name ask for. */
export type Wanted =
  | { readonly kind: 'help'; readonly command: Command | undefined }
  | { readonly kind: 'version' }
  | { readonly kind: 'run'; readonly command: Command; readonly given: Given }

/** Options that every command takes. */
export const commonOptions: Readonly<Record<string, Option>> = {
  file: { value: 'path', does: "the shop's database; else TALLYPLATE_FILE, else one in your data folder" },
  json: { does: 'answer with one JSON document on standard output' },
  help: { does: 'say what the command does and stop' },
}

/** Reads the command line against the table of commands; throws `WrongUse` with the nearest suggestion. */
export function readCommand(argv: readonly string[], commands: readonly Command[]): Wanted {
  const [name, ...rest] = argv
  if (name === undefined || name === 'help' || name === '--help' || name === '-h')
    return { kind: 'help', command: rest[0] === undefined ? undefined : commandNamed(rest[0], commands) }
  if (name === '--version' || name === '-v') return { kind: 'version' }
  const command = commandNamed(name, commands)
  const options = { ...command.options, ...commonOptions }
  const { values, words } = readOptions({ name: command.name, options, seeHelp: seeHelp(command) }, rest)
  if (values.help !== undefined) return { kind: 'help', command }
  refuseWordCount(command, words)
  return { kind: 'run', command, given: asGiven(values, words) }
}

function commandNamed(typed: string, commands: readonly Command[]): Command {
  const found = commands.find(({ name }) => name === typed)
  if (found !== undefined) return found
  const names = commands.map(({ name }) => name)
  const nearest = findNearestWord(typed, names)
  if (typed.startsWith('-'))
    throw new WrongUse(`The command comes first, then its options: tallyplate <command> ${typed} …`)
  throw new WrongUse(
    `There is no command “${typed}”. ${nearest ? `Did you mean ${nearest}?` : `Commands: ${names.join(', ')}.`}`,
  )
}

export type Values = Readonly<Record<string, readonly string[] | undefined>>

/** What takes the options: its name, their table, and where to read about them. */
export interface OptionTaker {
  readonly name: string
  readonly options: Readonly<Record<string, Option>>
  readonly seeHelp: string
}

/** Splits arguments into options and words; throws `WrongUse` for an option that is unknown, incomplete or repeated. */
export function readOptions({ name, options, seeHelp }: OptionTaker, rest: readonly string[]) {
  const { tokens } = parseArgs({
    args: [...rest],
    options: Object.fromEntries(
      Object.entries(options).map(([option, { value }]) => [
        option,
        { type: value ? 'string' : 'boolean' } as const,
      ]),
    ),
    allowPositionals: true,
    strict: false,
    tokens: true,
  })
  const values: Record<string, string[]> = {}
  const words: string[] = []
  for (const token of tokens) {
    if (token.kind === 'positional') words.push(token.value)
    if (token.kind !== 'option') continue
    const option = Object.hasOwn(options, token.name) ? options[token.name] : undefined
    if (option === undefined)
      throw new WrongUse(
        `${name} has no option ${token.rawName}. ${nearestOption(token.name, options) ?? seeHelp}`,
      )
    // What looks like the next option is one, and the value was forgotten; --option=-value says otherwise.
    const isForgotten = token.value === undefined || (!token.inlineValue && token.value.startsWith('--'))
    if (option.value !== undefined && (isForgotten || token.value === ''))
      throw new WrongUse(`${token.rawName} needs a ${option.value} after it. ${seeHelp}`)
    if (option.value === undefined && token.value !== undefined)
      throw new WrongUse(`${token.rawName} takes no value. ${seeHelp}`)
    const earlier = values[token.name] ?? []
    if (earlier.length > 0 && option.value !== undefined && option.repeats !== true)
      throw new WrongUse(`${token.rawName} is given twice. Give it once.`)
    values[token.name] = [...earlier, token.value ?? '']
  }
  return { values: values as Values, words }
}

function nearestOption(typed: string, options: Readonly<Record<string, Option>>): string | undefined {
  const nearest = findNearestWord(typed, Object.keys(options))
  return nearest && `Did you mean --${nearest}?`
}

function refuseWordCount(
  { name, words: wanted, leastWords, mostWords }: Command,
  words: readonly string[],
): void {
  if (words.length < leastWords)
    throw new WrongUse(`${name} needs more: tallyplate ${name} ${wanted}`.trimEnd())
  const extra = words[mostWords]
  if (extra !== undefined)
    throw new WrongUse(
      `${name} does not know what to do with “${extra}”. Put a text that holds spaces in quotation marks: tallyplate ${name} ${wanted}`.trimEnd(),
    )
}

function seeHelp({ name }: Command): string {
  return `See tallyplate ${name} --help.`
}

export function asGiven(values: Values, words: readonly string[]): Given {
  return {
    words,
    text: option => values[option]?.[0],
    texts: option => values[option] ?? [],
    has: option => values[option] !== undefined,
  }
}
