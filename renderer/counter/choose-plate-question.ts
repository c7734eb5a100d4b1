import type {
  AskChosen,
  AskedReading,
  FitAnswer,
  FittingFamily,
  FittingPart,
} from '../../shared-schemas/fit-check.ts'
import { listWords, nameReading } from './name-reading.ts'

/** What the plate asks for: the readings, the sentence, and what their values would mean where that is one part's. */
export interface PlateQuestion {
  readonly readings: readonly AskedReading[]
  readonly sentence: string
  /** How the readings were chosen; null where they are one family's of several. */
  readonly chosen: AskChosen | null
}

interface Answers {
  readonly families: readonly FittingFamily[]
  readonly openFamily: FittingFamily | undefined
  readonly part: FitAnswer | undefined
}

/** One question at a time: of the part in the hand, else of the family that is open, else the one that most families wait for. */
export function choosePlateQuestion({ families, openFamily, part }: Answers): PlateQuestion | null {
  if (part !== undefined) return asQuestion(part)
  if (openFamily !== undefined) return asQuestion(waitingPart(openFamily) ?? { ask: [], askChosen: null })
  return mostWaitedFor(families)
}

function asQuestion({ ask, askChosen }: Pick<FittingPart, 'ask' | 'askChosen'>): PlateQuestion | null {
  if (ask.length === 0) return null
  return { readings: ask, sentence: ask.map(({ text }) => text).join(' '), chosen: askChosen }
}

/** The best part that waits stands for its family, and only while no part of it is settled as a yes. */
function waitingPart(family: FittingFamily): FittingPart | undefined {
  return family.verdict === 'ask' ? family.parts.find(({ verdict }) => verdict === 'ask') : undefined
}

function mostWaitedFor(families: readonly FittingFamily[]): PlateQuestion | null {
  const waiting = new Map<string, { readings: readonly AskedReading[]; families: number }>()
  for (const family of families) {
    const readings = waitingPart(family)?.ask ?? []
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
    chosen: null,
  }
}

function numberFirst(readings: readonly AskedReading[]): number {
  return readings.some(({ reading }) => reading === 'model-number') ? 0 : 1
}
