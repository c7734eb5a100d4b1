import { alignColumns } from './align-columns.ts'
import type { Command, Option } from './command.ts'
import { commonOptions } from './read-command.ts'

/** What Tallyplate's command line can do, or what one command can. */
export function writeHelp(commands: readonly Command[], command: Command | undefined): string {
  return command === undefined ? writeOverview(commands) : writeCommand(command)
}

function writeOverview(commands: readonly Command[]): string {
  return [
    'tallyplate <command> [options]: from rating plate to the right part.',
    '',
    ...alignColumns(commands.map(({ name, does }) => [`  ${name}`, does])),
    '',
    'tallyplate <command> --help says more. With --json the answer is one JSON document.',
    'Exit code: 0 done; 1 done, and a person must look; 2 wrong use or bad input, nothing changed; 3 a defect.',
  ].join('\n')
}

function writeCommand({ name, words, does, options }: Command): string {
  return [
    `tallyplate ${name} ${words}`.trimEnd(),
    '',
    `${does}.`,
    '',
    ...alignColumns(Object.entries({ ...options, ...commonOptions }).map(writeOption)),
  ].join('\n')
}

function writeOption([name, { value, does }]: [string, Option]): string[] {
  return [`  --${name}${value === undefined ? '' : ` <${value}>`}`, does]
}
