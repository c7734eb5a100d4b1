import { existsSync } from 'node:fs'
import os from 'node:os'
import type { GivenInput, KnownRequestName, Output } from '../../../shared-schemas/index.ts'
import type { Problem } from '../../../shared-schemas/problem.ts'
import { wordProblem } from '../../../shared-schemas/problem-wording.ts'
import { type Application, openApplication } from '../../application.ts'
import { orRefuse, Refusal } from '../../requests/refusal.ts'
import { programVersion } from '../installation.ts'
import { progressLine } from '../progress-line.ts'
import { makeFolderOf, shopFile } from '../shop-file.ts'
import { surroundingsOf } from '../surroundings.ts'
import { commands } from './all-commands.ts'
import type { Answer, Command, Desk, Given, ShopUse } from './command.ts'
import { type ExitCode, exitCodeOf } from './exit-code.ts'
import { readCommand } from './read-command.ts'
import { writeHelp } from './write-help.ts'
import { WrongUse } from './wrong-use.ts'

/** Runs one command: the answer on standard output, everything else on standard error. Gives the exit code. */
export async function runCommandLine(argv: readonly string[]): Promise<ExitCode> {
  endQuietlyWhenNobodyReads()
  try {
    const wanted = readCommand(argv, commands)
    if (wanted.kind === 'version') return say(programVersion)
    if (wanted.kind === 'help') return say(writeHelp(commands, wanted.command))
    return await runCommand(wanted.command, wanted.given)
  } catch (thrown) {
    if (!(thrown instanceof WrongUse)) return reportDefect(thrown)
    process.stderr.write(`${thrown.message}\n`)
    return 2
  }
}

async function runCommand(command: Command, given: Given): Promise<ExitCode> {
  const databaseFile = shopFile(given.text('file'))
  const isJson = given.has('json')
  const desk = openDesk(databaseFile)
  try {
    prepareShop(command.shop, databaseFile)
    const answer = await command.run(given, desk)
    desk.clearProgress()
    writeAnswer(answer, isJson)
    if (answer.stay !== undefined) return await answer.stay()
    return answer.needsPerson ? 1 : 0
  } catch (thrown) {
    desk.clearProgress()
    if (!(thrown instanceof Refusal)) throw thrown
    return reportProblem(thrown.problem, isJson)
  } finally {
    desk.close()
  }
}

function prepareShop(use: ShopUse, databaseFile: string): void {
  if (use === 'must-exist' && !existsSync(databaseFile))
    throw new Refusal({ code: 'database-absent', file: databaseFile })
  if (use === 'may-make') makeFolderOf(databaseFile)
}

interface OpenDesk extends Desk {
  readonly clearProgress: () => void
  readonly close: () => void
}

/** The application opens with the first question, so that wrong use never touches the shop's file. */
function openDesk(databaseFile: string): OpenDesk {
  const progress = progressLine(process.stderr)
  let application: Application | undefined
  const reply: Desk['reply'] = (name, input) => {
    application ??= openApplication(
      surroundingsOf({ databaseFile, sampleFolder: null, device: os.hostname() }),
    )
    return application.ask(name, input, { report: progress.show })
  }
  return {
    databaseFile,
    reply,
    // The engine answered this very name, and its handler's type is this name's output; TypeScript cannot follow the
    // name through a reply.
    ask: async <Name extends KnownRequestName>(name: Name, input: GivenInput<Name>) =>
      orRefuse(await reply(name, input)) as Output<Name>,
    tell: line => process.stderr.write(`${line}\n`),
    clearProgress: progress.clear,
    close: () => application?.close(),
  }
}

function writeAnswer({ value, text }: Answer, isJson: boolean): void {
  process.stdout.write(isJson ? `${JSON.stringify(value)}\n` : `${text}\n`)
}

/** One line for people; with `--json` the problem as well, since a program waits for one document. */
function reportProblem(problem: Problem, isJson: boolean): ExitCode {
  process.stderr.write(`${wordProblem(problem)}\n`)
  if (isJson) process.stdout.write(`${JSON.stringify({ problem })}\n`)
  return exitCodeOf(problem.code)
}

/** Anything else thrown here is ours to mend. */
function reportDefect(thrown: unknown): ExitCode {
  const account = thrown instanceof Error ? (thrown.stack ?? thrown.message) : String(thrown)
  process.stderr.write(
    `Something went wrong inside Tallyplate. Report it with the lines below.\n${account}\n`,
  )
  return 3
}

function say(text: string): ExitCode {
  process.stdout.write(`${text}\n`)
  return 0
}

/** `tallyplate models … | head` closes the pipe early; that is no defect. */
function endQuietlyWhenNobodyReads(): void {
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code === 'EPIPE') process.exit(0)
    throw error
  })
}
