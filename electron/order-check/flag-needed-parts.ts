import type { OrderFlag } from '../../shared-schemas/order-check.ts'
import { flag } from './flag-table.ts'
import { type LineFacts, piecesOf } from './line-facts.ts'

/** How many pieces of each part the order asks for, and how many its lines need besides what they name. */
export interface NeedsOfOrder {
  readonly ordered: ReadonlyMap<string, { readonly pieces: number; readonly lines: readonly number[] }>
  readonly needed: ReadonlyMap<string, number>
}

export function countNeeds(order: readonly LineFacts[]): NeedsOfOrder {
  const ordered = new Map<string, { pieces: number; lines: number[] }>()
  const needed = new Map<string, number>()
  for (const facts of order) {
    const pieces = piecesOf(facts) ?? 0
    for (const { partNumber, quantity } of deliveredBy(facts)) {
      const known = ordered.get(partNumber) ?? { pieces: 0, lines: [] }
      known.pieces += pieces * quantity
      known.lines.push(facts.given.line)
      ordered.set(partNumber, known)
    }
    for (const need of needsOfLine(facts)) needed.set(need, (needed.get(need) ?? 0) + pieces)
  }
  return { ordered, needed }
}

/** The part as written, and whatever comes in it, being a kit. */
function deliveredBy({ part, dossier, current }: LineFacts) {
  if (part === undefined) return []
  const inside = current === undefined ? undefined : dossier?.contents.get(current.partId)
  return [{ partNumber: part.partNumber, quantity: 1 }, ...(inside ?? [])]
}

/** A part that is of use only together with others: a caution while they are not on the order, a note when they are. */
export function flagNeededParts(facts: LineFacts, { ordered, needed }: NeedsOfOrder): OrderFlag[] {
  return needsOfLine(facts).map(need => {
    const found = ordered.get(need)
    const wanted = needed.get(need) ?? 0
    if (found === undefined)
      return flag('needed-part-missing', `${need} is needed besides and is not on this order. Add it.`)
    const where = `line${found.lines.length === 1 ? '' : 's'} ${found.lines.join(', ')}`
    return found.pieces < wanted
      ? flag(
          'needed-part-missing',
          `${need} is needed besides: ${wanted} in all, and only ${found.pieces} on ${where}. Order ${wanted}.`,
        )
      : flag('needed-part-ordered', `${need} is needed besides, and is ordered on ${where}.`)
  })
}

function needsOfLine({ current, judged }: LineFacts): readonly string[] {
  if (current === undefined) return []
  if (judged !== undefined && judged.decision.verdict !== 'fits-with-changes') return []
  return current.alsoNeeds
}
