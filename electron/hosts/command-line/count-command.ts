import { readFile } from 'node:fs/promises'
import path from 'node:path'
import type { Output } from '../../../shared-schemas/index.ts'
import { alignColumns } from './align-columns.ts'
import type { Command, Desk } from './command.ts'
import { needed, present } from './options.ts'
import { readCountFile } from './read-count-file.ts'
import { WrongUse } from './wrong-use.ts'

export const count: Command = {
  name: 'count',
  words: '<count.csv>',
  leastWords: 1,
  mostWords: 1,
  does: 'compares a count of one location with the book, says what may explain each variance, and books it',
  options: {
    location: { value: 'location', does: 'what was counted' },
    post: { does: 'record the adjustments' },
    initials: { value: 'initials', does: 'who counted' },
  },
  shop: 'must-exist',
  async run(given, desk) {
    const file = path.resolve(given.words[0] ?? '')
    const location = needed(given, 'location', 'count')
    const counted = readCountFile(await readText(file), file)
    const who = present(given, ['initials'])
    const { countId } = await desk.ask('van-counts.begin-count', { location, ...who })
    for (const { partNumber, pieces } of counted)
      await desk.ask('van-counts.record-reading', { countId, part: partNumber, pieces, ...who })
    const read = await desk.ask('van-counts.read-count', { countId, compare: true })
    const posted = given.has('post') ? await settleAndPost(desk, read, who) : undefined
    return answer(read, posted)
  },
}

type Read = Output<'van-counts.read-count'>

/** Where there is one explanation, it is the reason that is booked. */
async function settleAndPost({ ask }: Desk, read: Read, who: { readonly initials?: string }) {
  const { countId } = read
  for (const { partNumber, variance, settled, proposed } of read.lines) {
    const [only, ...others] = proposed
    if (variance === null || variance === 0 || settled !== null || only === undefined || others.length > 0)
      continue
    const { kind, detail } = only
    await ask('van-counts.explain-variance', { countId, part: partNumber, kind, detail, ...who })
  }
  return ask('van-counts.post-count', { countId, ...who })
}

function answer(read: Read, posted: Output<'van-counts.post-count'> | undefined) {
  const counted = read.lines.filter(line => line.counted !== null)
  const lines = counted.map(({ partNumber, book, counted, variance, proposed }) => ({
    ...{ partNumber, book, counted, variance },
    ...(proposed[0] === undefined ? {} : { explanation: proposed[0].text }),
    explanations: proposed,
  }))
  const notCounted = read.lines
    .filter(line => line.counted === null)
    .map(({ partNumber, book }) => ({ partNumber, book }))
  const off = lines.filter(({ variance }) => variance !== 0)
  const value = {
    ...{ countId: read.countId, location: read.location, lines, notCounted },
    recordAccuracy: read.recordAccuracy ?? 1,
    posted: posted !== undefined,
  }
  return { value, text: wordCount(value, off), needsPerson: posted === undefined && off.length > 0 }
}

interface Counted {
  readonly location: string
  readonly lines: readonly object[]
  readonly notCounted: readonly object[]
  readonly recordAccuracy: number
  readonly posted: boolean
}

interface OffLine {
  readonly partNumber: string
  readonly book: number | null
  readonly counted: number | null
  readonly variance: number | null
  readonly explanation?: string
}

function wordCount(
  { location, lines, notCounted, recordAccuracy, posted }: Counted,
  off: readonly OffLine[],
): string {
  const rows = off.map(line => [
    line.partNumber,
    String(line.book),
    String(line.counted),
    signed(line.variance ?? 0),
    line.explanation ?? '',
  ])
  const table =
    rows.length === 0
      ? []
      : [...alignColumns([['part', 'book', 'counted', 'off', 'perhaps'], ...rows], [1, 2, 3]), '']
  const left =
    notCounted.length === 0 ? '' : ` ${notCounted.length} more stand in the book and were not counted.`
  const accuracy = `${(recordAccuracy * 100).toFixed(1)} % of ${lines.length} lines are right.${left}`
  const booked = posted
    ? 'The variances are booked.'
    : off.length === 0
      ? ''
      : 'Nothing is booked; --post does that.'
  return [...table, `${location}: ${accuracy}`, booked]
    .filter((line, at) => line !== '' || at < table.length)
    .join('\n')
}

function signed(pieces: number): string {
  return pieces > 0 ? `+${pieces}` : String(pieces)
}

async function readText(file: string): Promise<string> {
  try {
    return await readFile(file, 'utf8')
  } catch {
    throw new WrongUse(`${file} cannot be read. Name a CSV with the columns part_number and counted.`)
  }
}
