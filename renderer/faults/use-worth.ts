import { useQuery } from '@tanstack/react-query'
import type { Remedy } from '../../shared-schemas/fault-finding.ts'
import type { FittingFamily } from '../../shared-schemas/fit-check.ts'
import type { ApplianceQuestion } from '../../shared-schemas/plate-reading.ts'
import { ask } from '../bridge/client.ts'

/** What of the proposed families goes into this appliance, with verdicts and stock; undefined while no model is known. */
export function useWorth(appliance: ApplianceQuestion, remedies: readonly Remedy[]) {
  const wanted = new Set(remedies.flatMap(({ families }) => families.map(({ family }) => family)))
  const fitting = useQuery({
    queryKey: ['fit-check.list-fitting-parts', appliance],
    queryFn: () => ask('fit-check.list-fitting-parts', appliance),
    enabled: appliance.model.trim() !== '' && wanted.size > 0,
    structuralSharing: false,
  })
  return {
    families: fitting.data?.families.filter(({ family }) => wanted.has(family)),
    error: fitting.error,
    refetch: fitting.refetch,
  }
}

/** The families of one remedy that may go in, the surest first. */
export function familiesOf(remedy: Remedy, families: readonly FittingFamily[]): readonly FittingFamily[] {
  const ofRemedy = new Set(remedy.families.map(({ family }) => family))
  return families
    .filter(({ family, verdict }) => ofRemedy.has(family) && mayGoIn.includes(verdict))
    .sort((one, other) => mayGoIn.indexOf(one.verdict) - mayGoIn.indexOf(other.verdict))
}

const mayGoIn: readonly FittingFamily['verdict'][] = ['fits', 'fits-with-changes', 'ask']
