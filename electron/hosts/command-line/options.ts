import type { Given, Option } from './command.ts'
import { WrongUse } from './wrong-use.ts'

/** What a rating plate says besides its model number, as options of a command. */
export const readingOptions: Readonly<Record<string, Option>> = {
  brand: { value: 'brand', does: 'the brand on the plate or the door' },
  made: { value: 'date', does: 'when the appliance was made: 2014, 2014-06 or 2014-06-17' },
  serial: { value: 'serial', does: 'the serial number' },
  volts: { value: 'volts', does: 'as printed: 230, 220-240' },
  hertz: { value: 'hertz', does: 'as printed: 50, 50/60' },
  watts: { value: 'watts', does: 'as printed' },
  measured: {
    value: 'name=value',
    does: "what the old part has, by the family's attribute: thread=G 3/4",
    repeats: true,
  },
}

export function givenReadings(given: Given) {
  return {
    ...present(given, ['brand', 'made', 'serial', 'volts', 'hertz', 'watts']),
    ...(given.has('measured')
      ? { measured: Object.fromEntries(given.texts('measured').map(pair => readPair(pair))) }
      : {}),
  }
}

/** The options that were given, by name; those that were not are absent. */
export function present<const Name extends string>(
  given: Given,
  names: readonly Name[],
): { [Key in Name]?: string } {
  const found = names.flatMap(name => {
    const text = given.text(name)
    return text === undefined ? [] : [[name, text] as const]
  })
  return Object.fromEntries(found) as { [Key in Name]?: string }
}

/** An option that the command cannot do without. */
export function needed(given: Given, option: string, command: string): string {
  const text = given.text(option)
  if (text === undefined)
    throw new WrongUse(`${command} needs --${option}. See tallyplate ${command} --help.`)
  return text
}

export function wholeNumber(given: Given, option: string): number | undefined {
  const text = given.text(option)
  if (text === undefined) return undefined
  if (!/^\d{1,9}$/.test(text)) throw new WrongUse(`--${option} takes a whole number; “${text}” is none.`)
  return Number(text)
}

/** What an option like `--measured name=value` was given, its two sides. */
export function readPair(pair: string, option = 'measured'): [string, string] {
  const at = pair.indexOf('=')
  if (at < 1) throw new WrongUse(`--${option} takes name=value; “${pair}” is not that.`)
  return [pair.slice(0, at).trim(), pair.slice(at + 1).trim()]
}
