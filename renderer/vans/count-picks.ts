import type { TopUp } from '../../shared-schemas/van-counts.ts'

/** Pieces of one part that go one way: into the van from a place, or back out of it. */
export interface Pick {
  readonly part: string
  readonly quantity: number
  readonly location: string
  readonly way: 'into-van' | 'back'
}

/** A line of the sheet with how much of it was confirmed. */
export interface PickLine {
  readonly part: string
  readonly way: Pick['way']
  /** Where it is taken from; null for a leftover, which goes where the person says. */
  readonly from: string | null
  readonly bin: string | null
  /** The lines of the van's list that it answers. */
  readonly for: string
  readonly wanted: number
  readonly picked: number
}

/**
 * The list, bin by bin as one walks along them, with how much of each line was confirmed. A part that two lines of the
 * van's list ask for is picked once from each place.
 */
export function countPicks({ lines, leftovers }: TopUp, picks: readonly Pick[]): PickLine[] {
  const byPlace = [...Map.groupBy(lines, ({ partNumber, from }) => `${partNumber}\n${from}`).values()]
  const intoVan = byPlace.flatMap(ofOne => {
    const [first] = ofOne
    if (first === undefined) return []
    const { partNumber: part, from, bin } = first
    const asked = ofOne.map(({ wanted, instead }) => (instead ? `in place of ${wanted}` : wanted))
    const wanted = ofOne.reduce((total, { quantity }) => total + quantity, 0)
    return [{ part, way: 'into-van' as const, from, bin, for: asked.join(', '), wanted }]
  })
  const back = leftovers.map(({ partNumber: part, quantity }) => ({
    ...{ part, way: 'back' as const, from: null, bin: null, for: '', wanted: quantity },
  }))
  return [...intoVan.sort(compareBins), ...back].map(line => ({
    ...line,
    picked: picks.filter(pick => isOf(pick, line)).reduce((total, { quantity }) => total + quantity, 0),
  }))
}

/** 2 before 10, and what has no bin last. */
function compareBins(one: Binned, other: Binned): number {
  if (one.bin === null || other.bin === null) return Number(one.bin === null) - Number(other.bin === null)
  return one.bin.localeCompare(other.bin, 'en', { numeric: true })
}

interface Binned {
  readonly bin: string | null
}

function isOf(
  pick: Pick,
  { part, way, from }: { readonly part: string; readonly way: Pick['way']; readonly from: string | null },
): boolean {
  return pick.part === part && pick.way === way && (from === null || pick.location === from)
}

export type Confirmed =
  | { readonly ok: true; readonly pick: Pick }
  | { readonly ok: false; readonly why: string }

/** What scanning so many pieces of a part confirms. What the list does not ask for goes back where it was taken from. */
export function confirmPick(
  lines: readonly PickLine[],
  scanned: { readonly part: string; readonly pieces: number; readonly backTo: string },
): Confirmed {
  const { part, pieces, backTo } = scanned
  const ofPart = lines.filter(line => line.part === part)
  const waiting = ofPart.find(({ wanted, picked }) => picked + pieces <= wanted)
  if (waiting !== undefined) {
    const { way, from } = waiting
    return { ok: true, pick: { part, quantity: pieces, way, location: from ?? backTo } }
  }
  const [first] = ofPart
  const why =
    first === undefined
      ? `${part} is not on this list. Put it back where it was.`
      : `Of ${part} the list asks for ${sum(ofPart, 'wanted')}, and ${sum(ofPart, 'picked')} are confirmed. Put ${pieces === 1 ? 'it' : 'them'} back.`
  return { ok: false, why }
}

function sum(lines: readonly PickLine[], what: 'wanted' | 'picked'): number {
  return lines.reduce((total, line) => total + line[what], 0)
}

/** What was confirmed piece by piece as one line for each part and way, as it is booked. */
export function joinPicks(picks: readonly Pick[]): Pick[] {
  const same = Map.groupBy(picks, ({ part, location, way }) => `${part}\n${location}\n${way}`)
  return [...same.values()].flatMap(ofOne => {
    const [first] = ofOne
    const quantity = ofOne.reduce((total, pick) => total + pick.quantity, 0)
    return first === undefined ? [] : [{ ...first, quantity }]
  })
}
