import type { Remedy } from '../../shared-schemas/fault-finding.ts'
import type { FaultCause } from '../../shared-schemas/fault-guide.ts'
import type { RankedRemedy } from './reasoning/decide-end.ts'
import { remedyOfCause } from './remedy-of-cause.ts'

/** The remedies in words, ranked as they were; the causes of each as ranked, and what to try before anything is ordered. */
export function listRemedies(
  ranked: readonly RankedRemedy[],
  causes: readonly FaultCause[],
  likeliest: readonly { readonly cause: string }[],
): Remedy[] {
  const place = new Map(likeliest.map(({ cause }, at) => [cause, at]))
  const placeOf = ({ cause }: FaultCause) => place.get(cause) ?? causes.length
  const byRemedy = Map.groupBy(
    [...causes].sort((one, other) => placeOf(one) - placeOf(other)),
    remedyOfCause,
  )
  return ranked.flatMap(({ remedy, probability }) => {
    const ofRemedy = byRemedy.get(remedy) ?? []
    const [first] = ofRemedy
    if (first === undefined) return []
    const { endsIn, licensedFor, families } = first
    return [
      {
        remedy,
        endsIn,
        licensedFor,
        probability,
        causes: ofRemedy.map(({ cause }) => cause),
        families: [...families],
        advice: [...new Set(ofRemedy.map(({ advice }) => advice))].filter(advice => advice !== ''),
      },
    ]
  })
}
