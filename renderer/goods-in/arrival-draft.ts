import type { GivenInput } from '../../shared-schemas/index.ts'
import type { OrderSheet, SheetLine } from '../../shared-schemas/order-sheets.ts'

/** What came of one line, as it is being typed and scanned. */
export interface LineDraft {
  readonly good: string
  readonly damaged: string
  /** Paid for one piece; empty is the price of the line. */
  readonly paid: string
}

/** Another part that came in the place of the one ordered. */
export interface Substitute {
  readonly line: number
  readonly part: string
  readonly quantity: number
  readonly paid: string
  /** Why it is taken though nothing proves it; empty where it is proved. */
  readonly because: string
}

export interface ArrivalDraft {
  readonly lines: Readonly<Record<number, LineDraft>>
  readonly substitutes: readonly Substitute[]
}

export const nothingCame: ArrivalDraft = { lines: {}, substitutes: [] }
const emptyLine: LineDraft = { good: '', damaged: '', paid: '' }

export function lineDraftOf({ lines }: ArrivalDraft, line: number): LineDraft {
  return lines[line] ?? emptyLine
}

export function changeLine(draft: ArrivalDraft, line: number, changed: Partial<LineDraft>): ArrivalDraft {
  return { ...draft, lines: { ...draft.lines, [line]: { ...lineDraftOf(draft, line), ...changed } } }
}

export interface Scanned {
  readonly partNumber: string
  readonly pieces: number
  readonly condition: 'good' | 'damaged'
}

/**
 * Counts scanned pieces for the first line of that part that still lacks some, else for its last line: more may have come
 * than was ordered. Undefined where the part is on no line.
 */
export function countScan(
  draft: ArrivalDraft,
  lines: readonly SheetLine[],
  { partNumber, pieces, condition }: Scanned,
): { readonly draft: ArrivalDraft; readonly line: SheetLine; readonly counted: number } | undefined {
  const same = lines.filter(line => line.partNumber === partNumber)
  const lacking = same.find(line => piecesOf(lineDraftOf(draft, line.line).good) < line.toCome)
  const line = lacking ?? same.at(-1)
  if (line === undefined) return undefined
  const counted = piecesOf(lineDraftOf(draft, line.line)[condition]) + pieces
  return { draft: changeLine(draft, line.line, { [condition]: String(counted) }), line, counted }
}

/** A field that is empty, or not yet a number, counts none. */
export function piecesOf(typed: string): number {
  return /^\d{1,6}$/.test(typed.trim()) ? Number(typed) : 0
}

type Arrivals = GivenInput<'goods-in.receive-goods'>['arrivals']

/** What is to be booked; throws, in words, what a field has that cannot be. */
export function listArrivals({ lines, substitutes }: ArrivalDraft): Arrivals {
  const ofLines = Object.entries(lines).flatMap(([line, { good, damaged, paid }]) =>
    (
      [
        ['good', good],
        ['damaged', damaged],
      ] as const
    ).flatMap(([condition, typed]) => {
      const quantity = readPieces(typed, Number(line))
      return quantity === 0 ? [] : [{ line: Number(line), quantity, condition, ...pricePaid(paid) }]
    }),
  )
  const ofSubstitutes = substitutes.map(({ line, part, quantity, paid, because }) => ({
    ...{ line, part, quantity, ...pricePaid(paid) },
    ...(because.trim() === '' ? {} : { takenBecause: because.trim() }),
  }))
  return [...ofLines, ...ofSubstitutes]
}

function readPieces(typed: string, line: number): number {
  if (!/^\d{0,6}$/.test(typed.trim()))
    throw new Error(`Line ${line}: “${typed}” is no number of pieces. Type a whole number.`)
  return piecesOf(typed)
}

function pricePaid(paid: string) {
  const price = paid.trim().replace(',', '.')
  return price === '' ? {} : { unitPrice: price }
}

/** How a line stands with what is counted now: short, over, or just so. */
export function wordStanding({ line, toCome }: SheetLine, draft: ArrivalDraft): string {
  const { good } = lineDraftOf(draft, line)
  const instead = draft.substitutes.filter(one => one.line === line)
  const counted = piecesOf(good) + instead.reduce((sum, { quantity }) => sum + quantity, 0)
  if (counted > toCome) return `${counted - toCome} more than is due`
  if (toCome === 0) return 'nothing is due'
  if (counted === 0) return `${toCome} to come`
  return counted < toCome ? `${toCome - counted} short` : 'all of it'
}

/** What a sheet comes to after a delivery, in one sentence. */
export function wordBooked({ number, state, lines }: OrderSheet): string {
  const left = lines.reduce((sum, { toCome }) => sum + toCome, 0)
  if (left === 0) return `Booked. ${number} is ${state === 'cancelled' ? 'cancelled' : 'received'}.`
  return `Booked. ${left} ${left === 1 ? 'piece' : 'pieces'} of ${number} still to come.`
}
