import { expect, test } from 'vitest'
import { commands } from '../../../../electron/hosts/command-line/all-commands.ts'
import { readCommand } from '../../../../electron/hosts/command-line/read-command.ts'

function check(given: readonly string[], expected: RegExp): void {
  expect(() => readCommand(given, commands)).toThrow(expected)
}

test('words and options are told apart, wherever they stand', () => {
  const wanted = readCommand(['find', '--brand', 'Quorvane', 'QV 1042', '--json'], commands)
  if (wanted.kind !== 'run') throw new Error('a command is run')
  expect(wanted.command.name).toBe('find')
  expect(wanted.given.words).toEqual(['QV 1042'])
  expect(wanted.given.text('brand')).toBe('Quorvane')
  expect(wanted.given.has('json')).toBe(true)
  expect(wanted.given.text('type')).toBeUndefined()
})

test('an option that repeats keeps all its values', () => {
  const wanted = readCommand(['fit', '--measured', 'pins=3', '--measured', 'thread=G 3/4'], commands)
  if (wanted.kind !== 'run') throw new Error('a command is run')
  expect(wanted.given.texts('measured')).toEqual(['pins=3', 'thread=G 3/4'])
})

test('help and version are asked for in the usual ways', () => {
  for (const argv of [[], ['--help'], ['-h'], ['help']]) expect(readCommand(argv, commands).kind).toBe('help')
  expect(readCommand(['fit', '--help'], commands)).toMatchObject({ kind: 'help', command: { name: 'fit' } })
  expect(readCommand(['help', 'fit'], commands)).toMatchObject({ kind: 'help', command: { name: 'fit' } })
  expect(readCommand(['--version'], commands).kind).toBe('version')
})

test.each<[string[], RegExp]>([
  [['fidn'], /There is no command “fidn”\. Did you mean find\?/],
  [['zzzzzzzz'], /There is no command “zzzzzzzz”\. Commands: load, layouts, loads, find/],
  [['--json', 'find'], /The command comes first/],
  [['find', '--brnad', 'x'], /find has no option --brnad\. Did you mean --brand\?/],
  [['find', '--constructor'], /find has no option --constructor/],
  [['find', '--brand'], /--brand needs a brand after it/],
  [['find', '--brand', '--json'], /--brand needs a brand after it/],
  [['find', '--brand='], /--brand needs a brand after it/],
  [['find', '--json=yes'], /--json takes no value/],
  [['find', '--brand', 'a', '--brand', 'b'], /--brand is given twice/],
  [
    ['find', 'QV', '1042'],
    /does not know what to do with “1042”\. Put a text that holds spaces in quotation marks/,
  ],
  [['load'], /load needs more: tallyplate load <folder or file>/],
])('%j is refused in one line that says what to do', (argv, line) => check(argv, line))

test('every command says what it does, and every option too', () => {
  for (const { name, does, options } of commands) {
    expect(does, name).toMatch(/^[a-z].{10,}[^.]$/)
    for (const [option, { does: optionDoes }] of Object.entries(options))
      expect(optionDoes, `${name} --${option}`).toMatch(/.{8,}/)
  }
})
