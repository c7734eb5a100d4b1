import { useQuery } from '@tanstack/react-query'
import { ask } from '../bridge/client.ts'

/** What suppliers still owe, of one part or of all. */
export function useOnOrder(part?: string) {
  const due = useQuery({
    queryKey: ['stock', 'on-order', part ?? ''],
    queryFn: () => ask('order-sheets.list-on-order', part === undefined ? {} : { part }),
    staleTime: 0,
  })
  return { rows: due.data?.rows, error: due.error }
}
