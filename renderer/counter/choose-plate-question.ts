import type { AskedReading, FitAnswer, FittingFamily } from '../../shared-schemas/fit-check.ts'
import { listWords, nameReading } from './name-reading.ts'

/** What the plate asks for: the readings, the sentence, and what their values would mean where that is one part's. */
export interface PlateQuestion {
  readonly readings: readonly AskedReading[]
  readonly sentence: string
}

interface Answers {
  readonly families: readonly FittingFamily[]
  readonly openFamily: FittingFamily | undefined
  readonly part: FitAnswer | undefined
}

/** One question at a time: of the part in the hand, else of the family that is open, else the one that most families wait for. */
export function choosePlateQuestion({ families, openFamily, part }: Answers): PlateQuestion | null {
  if (part !== undefined) return asQuestion(part.ask)
  if (openFamily !== undefined) return asQuestion(askedOf(openFamily))
  return mostWaitedFor(families)
}

function asQuestion(readings: readonly AskedReading[]): PlateQuestion | null {
  return readings.length === 0 ? null : { readings, sentence: readings.map(({ text }) => text).join(' ') }
}

/** The best part that waits stands for its family, and only while no part of it is settled as a yes. */
function askedOf(family: FittingFamily): readonly AskedReading[] {
  if (family.verdict !== 'ask') return []
  return family.parts.find(({ verdict }) => verdict === 'ask')?.ask ?? []
}

function mostWaitedFor(families: readonly FittingFamily[]): PlateQuestion | null {
  const waiting = new Map<string, { readings: readonly AskedReading[]; families: number }>()
  for (const family of families) {
    const readings = askedOf(family)
    if (readings.length === 0) continue
    const name = readings.map(nameReading).join(' and ')
    const known = waiting.get(name)
    if (known === undefined) waiting.set(name, { readings, families: 1 })
    else known.families += 1
  }
  // Where as many wait for the one as for the other, the number is at hand already.
  const [most] = [...waiting.values()].sort(
    (one, other) => other.families - one.families || numberFirst(one.readings) - numberFirst(other.readings),
  )
  if (most === undefined) return null
  const decides = most.families === 1 ? 'one family' : `${most.families} families`
  return {
    // Each family means something else by the same value, so the values are left to the family once it is open.
    readings: most.readings.map(({ means: _, ...reading }) => reading),
    sentence: `Read ${listWords(most.readings.map(nameReading))}: it decides ${decides} below.`,
  }
}

function numberFirst(readings: readonly AskedReading[]): number {
  return readings.some(({ reading }) => reading === 'model-number') ? 0 : 1
}
