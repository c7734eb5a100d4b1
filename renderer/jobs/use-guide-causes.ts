import { useQuery } from '@tanstack/react-query'
import type { Job } from '../../shared-schemas/jobs.ts'
import { ask } from '../bridge/client.ts'

/** The causes that the fault guide knows for the symptom of a job, the likeliest first; none where it does not have it. */
export function useGuideCauses({ symptom, models }: Job): readonly string[] {
  const applianceType = models?.settled?.applianceType
  const { data } = useQuery({
    queryKey: ['fault-guide.weigh-faults', applianceType, symptom],
    queryFn: () => ask('fault-guide.weigh-faults', { applianceType: applianceType ?? '', symptom }),
    enabled: applianceType !== undefined && symptom !== '',
  })
  return data?.causes.map(({ cause }) => cause) ?? []
}
