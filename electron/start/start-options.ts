import { alignColumns } from '../hosts/command-line/align-columns.ts'
import type { Option } from '../hosts/command-line/command.ts'
import { wholeNumber } from '../hosts/command-line/options.ts'
import { asGiven, readOptions } from '../hosts/command-line/read-command.ts'
import { WrongUse } from '../hosts/command-line/wrong-use.ts'

export interface StartOptions {
  readonly help: boolean
  /** The browser, though Electron is there. */
  readonly browser: boolean
  /** Try to fetch Electron though it failed before. */
  readonly fetchElectron: boolean
  /** Open no browser; only say the address. */
  readonly noOpen: boolean
  readonly port: number
  readonly file: string | undefined
}

const options: Readonly<Record<string, Option>> = {
  browser: { does: "show the screen in a browser, not in Electron's window" },
  'fetch-electron': { does: 'try to fetch Electron, also where that failed before' },
  'no-open': { does: 'open no browser; only print the address' },
  port: { value: 'number', does: 'the port on 127.0.0.1 for the browser; any free one unless told' },
  file: { value: 'path', does: "the shop's database; else TALLYPLATE_FILE, else one in your data folder" },
  help: { does: 'say this and stop' },
}

export function readStartOptions(argv: readonly string[]): StartOptions {
  const { values, words } = readOptions(
    { name: 'npm start', options, seeHelp: 'See npm start -- --help.' },
    argv,
  )
  if (words[0] !== undefined)
    throw new WrongUse(`npm start does not know what to do with “${words[0]}”. See npm start -- --help.`)
  const given = asGiven(values, words)
  const port = wholeNumber(given, 'port') ?? 0
  if (port > 65_535) throw new WrongUse(`--port takes a number up to 65535; ${port} is more.`)
  return {
    help: given.has('help'),
    browser: given.has('browser'),
    fetchElectron: given.has('fetch-electron'),
    noOpen: given.has('no-open'),
    port,
    file: given.text('file'),
  }
}

export function writeStartHelp(): string {
  const table = Object.entries(options).map(([name, { value, does }]) => [
    `  --${name}${value === undefined ? '' : ` <${value}>`}`,
    does,
  ])
  return ['npm start -- [options]: opens the Counter.', '', ...alignColumns(table)].join('\n')
}
