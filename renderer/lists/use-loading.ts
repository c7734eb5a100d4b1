import { useQuery } from '@tanstack/react-query'
import { useRef } from 'react'
import type { Output } from '../../shared-schemas/index.ts'
import { ask } from '../bridge/client.ts'

type Loading = NonNullable<Output<'catalogue.read-loading'>['loading']>

export interface Pace extends Loading {
  /** Since this file was begun; null until that can be told. */
  readonly rowsPerSecond: number | null
}

/** Asks a few times a second how far the load is, while there is one. */
export function useLoading(isRunning: boolean): Pace | null {
  const begun = useRef<{ readonly file: string; readonly rows: number; readonly at: number }>(undefined)
  const { data } = useQuery({
    queryKey: ['catalogue.read-loading'],
    queryFn: async (): Promise<Pace | null> => {
      const { loading } = await ask('catalogue.read-loading', {})
      if (loading === null) return null
      const now = performance.now()
      const { file, rowsDone } = loading
      if (begun.current?.file !== file || begun.current.rows > rowsDone)
        begun.current = { file, rows: rowsDone, at: now }
      const seconds = (now - begun.current.at) / 1000
      return {
        ...loading,
        rowsPerSecond: seconds < surestFromSeconds ? null : (rowsDone - begun.current.rows) / seconds,
      }
    },
    enabled: isRunning,
    refetchInterval: 250,
    staleTime: 0,
    gcTime: 0,
  })
  return isRunning ? (data ?? null) : null
}

const surestFromSeconds = 0.7
