import type { ExplanationKind } from '../../shared-schemas/van-counts.ts'

/** A counted part whose pieces are not what the book had. */
export interface Variance {
  readonly partId: number
  readonly partNumber: string
  readonly familyId: number
  readonly book: number
  readonly counted: number
}

/** What the shop knows that may explain a variance. */
export interface CountFacts {
  /** Parts that take each other's place, either way, by the catalogue. */
  readonly replaced: readonly { readonly one: number; readonly other: number }[]
  /** Jobs of this place since its last count for which no part of a family that they needed was booked. */
  readonly unbookedJobs: readonly { readonly job: string; readonly date: string; readonly familyId: number }[]
  /** Movements to and from other places of the shop in the days before the count. Above 0 came here. */
  readonly transfers: readonly {
    readonly movementId: string
    readonly partId: number
    readonly pieces: number
    readonly otherPlace: string
  }[]
  /** Sizes of the packs in which suppliers sell the part. */
  readonly packs: ReadonlyMap<number, readonly number[]>
  /** Pieces of each receipt of the part here since the last count. */
  readonly receipts: ReadonlyMap<number, readonly number[]>
}

export interface ProposedExplanation {
  readonly partId: number
  readonly kind: ExplanationKind
  /** The other part's number, the job, the movement or the pack. */
  readonly detail: string
  readonly text: string
}

/**
 * What may explain each variance, the likeliest first. Each kind has one tell-tale, as stock-takers know them (common
 * practice): two parts of one family that are off by as many either way were swapped; a missing piece of a family that
 * a job needed and nobody booked was fitted there; a transfer as large as the variance has not arrived, or not left; a
 * difference of whole packs less their pieces was counted or received in packs; and two figures that differ by a
 * multiple of nine may have their digits exchanged.
 */
export function proposeExplanations(
  variances: readonly Variance[],
  facts: CountFacts,
): ProposedExplanation[] {
  const jobsLeft = [...facts.unbookedJobs]
  return variances.flatMap(variance => [
    ...replacedNumbers(variance, variances, facts),
    ...swaps(variance, variances),
    ...misreadNumbers(variance, variances),
    ...jobLines(variance, jobsLeft),
    ...transfers(variance, facts),
    ...packs(variance, facts),
    ...exchangedDigits(variance),
  ])
}

const off = ({ counted, book }: Variance) => counted - book

function opposites(variance: Variance, all: readonly Variance[]): Variance[] {
  return all.filter(other => other.partId !== variance.partId && off(other) === -off(variance))
}

/** One kind of piece lies here under its old number and its new one. */
function replacedNumbers(variance: Variance, all: readonly Variance[], { replaced }: CountFacts) {
  return opposites(variance, all)
    .filter(({ partId }) =>
      replaced.some(
        ({ one, other }) =>
          (one === partId && other === variance.partId) || (other === partId && one === variance.partId),
      ),
    )
    .map(other =>
      propose(
        variance,
        'replaced-number',
        other.partNumber,
        `${pieces(variance)} under ${other.partNumber}, which takes its place or gave it up`,
      ),
    )
}

function swaps(variance: Variance, all: readonly Variance[]) {
  return opposites(variance, all)
    .filter(({ familyId }) => familyId === variance.familyId)
    .map(other =>
      off(variance) < 0
        ? propose(
            variance,
            'swap',
            other.partNumber,
            `used where ${other.partNumber} was booked, which is over by as many`,
          )
        : propose(
            variance,
            'swap',
            other.partNumber,
            `booked as used where ${other.partNumber} was, which is short by as many`,
          ),
    )
}

/** Another part, off by as many the other way, whose number is one slip away: one was taken for the other in counting or booking. */
function misreadNumbers(variance: Variance, all: readonly Variance[]) {
  return opposites(variance, all)
    .filter(
      other => other.familyId !== variance.familyId && isOneSlipAway(variance.partNumber, other.partNumber),
    )
    .map(other =>
      propose(
        variance,
        'digits',
        other.partNumber,
        `taken for ${other.partNumber}, whose number is one slip away`,
      ),
    )
}

/** One character other, or two neighbours exchanged. */
function isOneSlipAway(one: string, other: string): boolean {
  if (one.length !== other.length) return false
  const differing = [...one].flatMap((character, at) => (character === other[at] ? [] : [at]))
  const [first, second] = differing
  if (differing.length === 1) return true
  return (
    differing.length === 2 &&
    first !== undefined &&
    second === first + 1 &&
    one[first] === other[second] &&
    one[second] === other[first]
  )
}

/** Each missing piece takes one job; a job explains one line. */
function jobLines(variance: Variance, jobsLeft: CountFacts['unbookedJobs'][number][]) {
  if (off(variance) >= 0) return []
  const fitting = jobsLeft.filter(({ familyId }) => familyId === variance.familyId)
  if (fitting.length === 0 || fitting.length < -off(variance)) return []
  return fitting
    .slice(0, -off(variance))
    .map(({ job, date }) =>
      propose(variance, 'job-line', job, `fitted on job ${job} of ${date} and not booked`),
    )
}

function transfers(variance: Variance, facts: CountFacts) {
  return facts.transfers
    .filter(({ partId, pieces }) => partId === variance.partId && pieces === -off(variance))
    .map(({ movementId, pieces, otherPlace }) =>
      propose(
        variance,
        'transfer',
        movementId,
        pieces > 0
          ? `booked as come from ${otherPlace}, and perhaps still there`
          : `booked as gone to ${otherPlace}, and perhaps still here`,
      ),
    )
}

/** Packs counted as pieces, pieces counted as packs, or packs received and booked as pieces. */
function packs(variance: Variance, facts: CountFacts) {
  const { partId, book, counted } = variance
  const received = facts.receipts.get(partId) ?? []
  return (facts.packs.get(partId) ?? [])
    .filter(
      pack =>
        pack > 1 &&
        ((counted > 0 && counted * pack === book) ||
          (book > 0 && book * pack === counted) ||
          received.some(pieces => off(variance) === pieces * (pack - 1))),
    )
    .map(pack =>
      propose(
        variance,
        'pack',
        String(pack),
        `counted or received in packs of ${pack} where pieces were meant`,
      ),
    )
}

function exchangedDigits(variance: Variance) {
  const { book, counted } = variance
  const [one, other] = [String(counted), String(Math.max(0, book))]
  if (one.length < 2 || !isExchanged(one, other)) return []
  return [
    propose(variance, 'digits', other, `written ${one} where ${other} was read: its digits are exchanged`),
  ]
}

function isExchanged(one: string, other: string): boolean {
  return (
    one !== other &&
    one.length === other.length &&
    isOneSlipAway(one, other) &&
    [...one].sort().join() === [...other].sort().join()
  )
}

function propose(
  { partId }: Variance,
  kind: ExplanationKind,
  detail: string,
  text: string,
): ProposedExplanation {
  return { partId, kind, detail, text }
}

function pieces(variance: Variance): string {
  const count = Math.abs(off(variance))
  return `${count} ${count === 1 ? 'piece lies' : 'pieces lie'}`
}
