/** The parts of a date that a serial may hold. */
export const dateGroups = ['year', 'week', 'month'] as const
export type DateGroup = (typeof dateGroups)[number]

/** How the characters of a group stand for a number: as figures, as letters that count on, or by a list. */
export type Meaning =
  | { readonly kind: 'figures' }
  | { readonly kind: 'letters'; readonly first: string; readonly number: number; readonly skipped: string }
  | { readonly kind: 'list'; readonly numbers: ReadonlyMap<string, number> }

/**
 * What a date code's `means` says of each group: `year=2-digit;week=2-digit`, `year=letter A=2004 skip I O`, or a list
 * for the year alone, `A=2010|B=2011`. A group of which nothing is said is figures. Undefined: it cannot be read.
 */
export function readMeanings(means: string): ReadonlyMap<DateGroup, Meaning> | undefined {
  if (means.trim() === '') return new Map()
  const list = readList(means)
  if (list !== undefined) return new Map([['year', list]])
  const said = means.split(';').map(readSaid)
  return said.every(one => one !== undefined) ? new Map(said) : undefined
}

function readSaid(said: string): readonly [DateGroup, Meaning] | undefined {
  const at = said.indexOf('=')
  const group = dateGroups.find(one => one === said.slice(0, Math.max(at, 0)).trim())
  const meaning = readMeaning(said.slice(at + 1).trim())
  return group === undefined || meaning === undefined ? undefined : [group, meaning]
}

function readMeaning(how: string): Meaning | undefined {
  if (/^[124]-digit$/.test(how)) return { kind: 'figures' }
  const letters = /^letter ([A-Z])=(\d+)(?: skip ([A-Z](?: [A-Z])*))?$/.exec(how)
  if (letters === null) return undefined
  const [, first = '', number, skipped = ''] = letters
  return { kind: 'letters', first, number: Number(number), skipped }
}

function readList(means: string): Meaning | undefined {
  const pairs = means.split(/[|,;\s]+/).map(pair => /^([A-Z0-9]{1,2})=(\d{4})$/i.exec(pair))
  if (!pairs.every(pair => pair !== null)) return undefined
  return {
    kind: 'list',
    numbers: new Map(pairs.map(([, shown = '', year]) => [shown.toUpperCase(), Number(year)])),
  }
}
